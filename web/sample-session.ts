import type { Header, NewEvent, SessionEvent } from '../shared/session/events.ts';
import { fold, type Session } from '../shared/session/fold.ts';
import { type SetupInput, setupSchema } from '../shared/session/setup.ts';
import type { Placement } from '../shared/survey/plan.ts';

/** Constructed sessions for the tests of the page: one way of seven stations, walked out unless more is asked. */

type Change = Partial<Extract<SetupInput, { kind: 'way' }>>;

export const out = 'front way out';
export const back = 'front way back';
/** The walk back, which the sample does not have from the start. */
export const walkBack: NewEvent = { type: 'run', run: back, on: true };

export function sampleHeader(change: Change = {}): Header {
  const setup = setupSchema.parse({
    kind: 'way',
    part: 'bed 03',
    surface: 'front way',
    lengthMm: 900,
    baseMm: 150,
    stations: 7,
    back: 'no',
    instrument: { name: 'L2', source: 'cable', port: 'p', profile: 'line-decimal', unit: 'um/m' },
    ...change,
  });
  return headerOf(setup);
}

export function headerOf(setup: SetupInput): Header {
  return { recording: 1, id: 'sample', program: 'test', t: 0, setup: setupSchema.parse(setup) };
}

export function numbered(news: readonly NewEvent[], first = 1): SessionEvent[] {
  return news.map((event, k) => ({ seq: first + k, t: k, m: k, ...event }) as SessionEvent);
}

/** The feet on the k-th step of the way. */
export function feet(k: number, run = out): Placement {
  return { run, at: [`F${k}`, `F${k + 1}`] };
}

export function takeAt(place: Placement, value: number, more: object = {}): NewEvent {
  return {
    type: 'take',
    place,
    from: 'L2',
    value,
    spread: 0.2,
    readings: [1, 9],
    count: 9,
    by: 'hands-free',
    steadiness: 'steady',
    ...more,
  };
}

export function sampleTake(k: number, value: number, run = out, more: object = {}): NewEvent {
  return takeAt(feet(k, run), value, more);
}

export function sampleSession(news: readonly NewEvent[], change: Change = {}): Session {
  return fold(sampleHeader(change), numbered(news));
}
