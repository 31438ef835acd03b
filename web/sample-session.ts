import type { Header, NewEvent, SessionEvent } from '../shared/session/events.ts';
import { fold, type Session } from '../shared/session/fold.ts';
import { type SetupInput, setupSchema } from '../shared/session/setup.ts';
import type { WalkId } from '../shared/survey/way.ts';

/** Constructed sessions for the tests of the page. */
export function sampleHeader(change: Partial<SetupInput> = {}): Header {
  const setup = setupSchema.parse({
    kind: 'way',
    part: 'bed 03',
    surface: 'front way',
    lengthMm: 900,
    baseMm: 150,
    stations: 7,
    level: { name: 'L2', source: 'cable', port: 'p', profile: 'line-decimal', unit: 'um/m' },
    ...change,
  });
  return { recording: 1, id: 'sample', program: 'test', t: 0, setup };
}

export function numbered(news: readonly NewEvent[], first = 1): SessionEvent[] {
  return news.map((event, k) => ({ seq: first + k, t: k, m: k, ...event }) as SessionEvent);
}

export function sampleTake(k: number, value: number, walk: WalkId = 'out', more: object = {}): NewEvent {
  return {
    type: 'take',
    place: { walk, from: `F${k}`, to: `F${k + 1}` },
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

export function sampleSession(news: readonly NewEvent[], change: Partial<SetupInput> = {}): Session {
  return fold(sampleHeader(change), numbered(news));
}
