import { describe, expect, test } from 'vitest';
import { placementKey } from '../survey/plan.ts';
import type { Header, NewEvent, SessionEvent } from './events.ts';
import { apply, begin, fold } from './fold.ts';
import { setupSchema } from './setup.ts';
import { toCsv } from './to-csv.ts';
import { toSheet } from './to-sheet.ts';

const setup = setupSchema.parse({
  kind: 'way',
  part: 'bed 03',
  surface: 'front way',
  lengthMm: 600,
  baseMm: 150,
  stations: 5,
  back: 'no',
  instrument: { name: 'L2', source: 'typed', unit: 'um/m' },
});
const header: Header = { recording: 1, id: 'a', program: 'test', t: 0, setup };

function events(...news: NewEvent[]): SessionEvent[] {
  return news.map((event, k) => ({ seq: k + 1, t: k, m: k, ...event }) as SessionEvent);
}

const take = (from: number, value: number, walk: 'out' | 'back' = 'out', more: object = {}): NewEvent => ({
  type: 'take',
  place: { run: `front way ${walk}`, at: [`F${from}`, `F${from + 1}`] },
  from: 'L2',
  value,
  spread: null,
  readings: null,
  count: 1,
  by: 'typed',
  steadiness: null,
  ...more,
});
const key = (session: ReturnType<typeof fold>) => session.next && placementKey(session.next);

describe('the fold of a session', () => {
  test('goes from placement to placement, and is done after the last', () => {
    let session = begin(header);
    const seen = [key(session)];
    for (const event of events(take(0, 1), take(1, 2), take(2, 3), take(3, 4))) {
      session = apply(session, event);
      seen.push(key(session));
    }
    expect(seen).toEqual([
      'front way out:F0-F1',
      'front way out:F1-F2',
      'front way out:F2-F3',
      'front way out:F3-F4',
      null,
    ]);
  });

  test('a place that is skipped after it was taken counts nothing, and its take keeps the reason', () => {
    const place = { run: 'front way out', at: ['F1', 'F2'] as ['F1', 'F2'] };
    const session = fold(
      header,
      events(take(0, 1), take(1, 45), { type: 'aim', place }, { type: 'skip', place, reason: 'chipped' }),
    );
    expect(session.takes.map(({ out }) => out)).toEqual([undefined, 'chipped']);
    expect(toSheet(session).walks![0]!.readings).toEqual([['F0', 'F1', 1]]);
    expect(key(session)).toBe('front way out:F2-F3');
  });

  test('a run that is given up counts nothing, and counts again when it is wanted again', () => {
    const both = { ...header, setup: setupSchema.parse({ ...setup, back: 'same' }) };
    const forth = [take(0, 1), take(1, 2), take(2, 3), take(3, 4), take(3, 900, 'back')];
    const run = { type: 'run', run: 'front way back' } as const;
    const walks = (...news: NewEvent[]) => toSheet(fold(both, events(...news))).walks!.map(({ id }) => id);
    expect(walks(...forth)).toEqual(['front way out', 'front way back']);
    expect(walks(...forth, { ...run, on: false })).toEqual(['front way out']);
    expect(walks(...forth, { ...run, on: false }, { ...run, on: true })).toEqual([
      'front way out',
      'front way back',
    ]);
  });

  test('a voided take is kept with its reason and its placement comes next', () => {
    const session = fold(header, events(take(0, 1), take(1, 2), { type: 'void', take: 1, reason: 'bumped' }));
    expect(session.takes.map(({ out }) => out)).toEqual(['bumped', undefined]);
    expect(key(session)).toBe('front way out:F0-F1');
    expect(session.counted.size).toBe(1);
  });

  test('after a repeated placement the walk goes on where it was left', () => {
    const again = {
      type: 'aim',
      place: { run: 'front way out', at: ['F0', 'F1'] as [string, string] },
    } as const;
    const session = fold(header, events(take(0, 1), take(1, 2), again, take(0, 5, 'out', { replaces: 1 })));
    expect(key(session)).toBe('front way out:F2-F3');
    expect(session.counted.get('front way out:F0-F1')?.value).toBe(5);
    expect(session.takes[0]?.out).toBe('repeated');
  });

  test('a skipped placement is passed over, and stands again once it is taken', () => {
    const skip = {
      type: 'skip',
      place: { run: 'front way out', at: ['F1', 'F2'] as [string, string] },
      reason: 'clamp',
    } as const;
    const skipped = fold(header, events(take(0, 1), skip));
    expect(key(skipped)).toBe('front way out:F2-F3');
    expect(fold(header, events(take(0, 1), skip, take(1, 2))).skipped.size).toBe(0);
  });

  test('the walk back runs from the far end and keeps near and far foot', () => {
    const session = fold(header, events({ type: 'run', run: 'front way back', on: true }));
    expect(key(session)).toBe('front way back:F3-F4');
  });

  test('does not look at an event of a type that it does not know', () => {
    const strange = { seq: 2, t: 0, m: 0, type: 'hologram' } as unknown as SessionEvent;
    const session = fold(header, [...events(take(0, 1)), strange]);
    expect(session.counted.size).toBe(1);
    expect(session.seq).toBe(2);
  });
});

describe('the sheet of a session', () => {
  test('holds what counts, in the order in which it was taken, and only the stations that are touched', () => {
    const turned = { ...header, setup: { ...setup, back: 'turned' } as typeof setup };
    const sheet = toSheet(
      fold(
        turned,
        events(
          take(0, 1),
          take(1, 2),
          { type: 'run', run: 'front way back', on: true },
          take(1, -2, 'back'),
          take(0, -1, 'back'),
        ),
      ),
    );
    expect(sheet.stations).toEqual({ F0: [0, 0], F1: [150, 0], F2: [300, 0] });
    expect(sheet.walks).toEqual([
      {
        id: 'front way out',
        zero: 'free',
        facing: 1,
        drift: false,
        readings: [
          ['F0', 'F1', 1],
          ['F1', 'F2', 2],
        ],
      },
      {
        id: 'front way back',
        zero: 'free',
        facing: -1,
        drift: false,
        readings: [
          ['F1', 'F2', -2],
          ['F0', 'F1', -1],
        ],
      },
    ]);
  });

  test('counts graduations in their unit', () => {
    const instrument = { ...setup.instrument, unit: 'mm/m' as const, graduation: 0.02, sigma: 0.25 };
    const sheet = toSheet(fold({ ...header, setup: { ...setup, instrument } }, events(take(0, 1.5))));
    expect(sheet.units).toMatchObject({ tilt: 'mm/m' });
    expect(sheet.walks?.[0]).toMatchObject({ sigma: 0.005, readings: [['F0', 'F1', 0.03]] });
  });
});

test('the CSV holds every take, the voided ones too, and no text that a spreadsheet would run', () => {
  const csv = toCsv(fold(header, events(take(0, -1.5), { type: 'void', take: 1, reason: '=cmd(), "x"' })));
  const [head, row] = csv.split('\r\n');
  expect(head).toBe('seq,time,run,stations,value,unit,spread,readings,taken by,steadiness,counts,why not');
  expect(row).toBe(`1,1970-01-01T00:00:00.000Z,front way out,F0 F1,-1.5,um/m,,1,typed,,no,"'=cmd(), ""x"""`);
});

test.each(['__proto__', 'front\u0000way', 'x'.repeat(61), ' '])('a surface is not called %j', (surface) => {
  expect(setupSchema.safeParse({ ...setup, surface }).success).toBe(false);
});
