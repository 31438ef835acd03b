import { describe, expect, test } from 'vitest';
import { setupSchema } from '../session/setup.ts';
import { validateSheet } from '../sheet/sheet.ts';
import { differenceOf } from './before-after.ts';
import { blueAndNumbers, hingeShape, type Print } from './blue.ts';
import { convergenceOf, roundsForeseen } from './convergence.ts';
import { nextSetup } from './template.ts';
import { unlike } from './unlike.ts';

describe('before and after', () => {
  test('variances of two surveys add; what is smaller than twice that is the same', () => {
    expect(differenceOf({ value: 10, u: 3 }, { value: 4, u: 4 })).toEqual({ value: -6, u: 5, same: true });
    expect(differenceOf({ value: 15, u: 3 }, { value: 4, u: 4 }).same).toBe(false);
  });
});

describe('convergence', () => {
  const rounds = (...values: number[]) => values.map((value) => ({ value, u: 0.5 }));

  test('counts the rounds that are left at the gain of the last one, with their range', () => {
    const found = convergenceOf(rounds(40, 31, 22), 10);
    expect(found.roundsLeft).toBe(2);
    expect(found.range).toEqual({ fewest: 2, most: 2 });
    expect(
      convergenceOf(
        [
          { value: 40, u: 1 },
          { value: 36, u: 1 },
        ],
        10,
      ).range,
    ).toEqual({ fewest: 5, most: 24 });
  });

  test('says when nothing can be told', () => {
    expect(convergenceOf(rounds(40, 39.5), 10)).toMatchObject({ roundsLeft: null });
    expect(convergenceOf(rounds(40, 50), 10).words).toBe('The last round made it worse.');
    expect(convergenceOf(rounds(40), 10).roundsLeft).toBeNull();
    expect(convergenceOf(rounds(40, 9), 10).roundsLeft).toBe(0);
    // A signed figure comes down from either side.
    expect(convergenceOf(rounds(-40, -30), 10).roundsLeft).toBe(3);
  });

  test('rounds foreseen by the plan', () => {
    expect([0, 1, 4, 5, 9].map((passes) => roundsForeseen(passes, 4))).toEqual([0, 1, 1, 2, 3]);
  });
});

describe('what was not alike', () => {
  const setup = setupSchema.parse({
    kind: 'way',
    part: 'bed',
    surface: 'way',
    lengthMm: 400,
    baseMm: 200,
    stations: 3,
    instrument: { name: 'L', source: 'typed', unit: 'um/m' },
    operator: 'a',
    support: '3 feet',
    partC: 20,
  });
  const sheetOf = (baseMm: number, facing: 1 | -1 = 1, names = ['A', 'B', 'C']) =>
    validateSheet({
      sheet: 1,
      kind: 'way',
      stations: Object.fromEntries(names.map((name, k) => [name, [baseMm * k, 0]])),
      lines: { way: names },
      walks: [{ id: 'w', facing, readings: names.slice(1).map((to, k) => [names[k], to, 1]) }],
    });
  const survey = (more: object, baseMm = 200, facing: 1 | -1 = 1) =>
    ({ session: { setup: { ...setup, ...more } }, sheet: sheetOf(baseMm, facing) }) as never;
  const whats = (after: never) => unlike(survey({}), after).map(({ what }) => what);

  test('nothing when all is alike', () => expect(whats(survey({ partC: 20.3 }))).toEqual([]));
  test.each([
    [{ support: '4 feet' }, ['support']],
    [{ operator: 'b' }, ['person']],
    [{ partC: 22 }, ['iron']],
    [{ partC: undefined }, ['iron']],
    [{ instrument: { ...setup.instrument, serial: '7' } }, ['instrument']],
    [
      { instrument: { ...setup.instrument, sigma: 1, provedOn: 'today' } },
      ['spread of one reading', 'instrument proved'],
    ],
  ])('%j', (more, expected) => expect(whats(survey(more))).toEqual(expected));
  test('stations, foot spacing and facing, from the sheets', () => {
    expect(whats(survey({}, 150))).toEqual(['stations, mm', 'foot spacing, mm']);
    expect(whats(survey({}, 200, -1))).toEqual(['walks']);
    const leftOut = { ...(survey({}) as object), sheet: sheetOf(200, 1, ['A', 'B']) } as never;
    expect(unlike(survey({}), leftOut)).toEqual([
      { what: 'stations, mm', before: 'A at 0, B at 200, C at 400', after: 'A at 0, B at 200' },
    ]);
  });
  test('a sheet that was brought in tells nothing of its circumstances, and that is said', () => {
    const sheet = { session: null, sheet: sheetOf(200) };
    expect(unlike(sheet, sheet)).toHaveLength(1);
    expect(unlike(survey({}), sheet)[0]!.after).toContain('not known');
  });
  test('the first survey is the template of the next, but for what must be looked at anew', () => {
    const next = setupSchema.parse(nextSetup(setup, 'in work 1'));
    expect(next).toMatchObject({ round: 'in work 1', support: '3 feet', baseMm: 200, operator: '' });
    expect(next.partC).toBeUndefined();
  });
});

describe('blue and numbers', () => {
  const names = ['A', 'B', 'C', 'D'];
  const contact = { restsOn: ['B', 'C'], inked: ['B', 'C'] };
  const print = (...showing: string[]): Print => ({
    against: 'plate',
    stations: Object.fromEntries(names.map((name) => [name, { shows: showing.includes(name) }])),
  });

  test('agree', () => {
    expect(blueAndNumbers(contact, names, print('B', 'C'))).toMatchObject({ agree: true, causes: [] });
  });
  test('a high spot that stays bare may be rubbed clean', () => {
    const { agree, causes } = blueAndNumbers(contact, names, print('C'));
    expect(agree).toBe(false);
    expect(causes[0]).toContain('B: a very high spot is rubbed clean');
  });
  test('nothing where it should show points to a clearance face', () => {
    expect(blueAndNumbers(contact, names, print('A')).causes.join()).toContain('thin shim');
  });
  test('hinge points tell the shape', () => {
    expect(hingeShape([300, 700], 0, 1000)).toBe('flat');
    expect(hingeShape([500], 0, 1000)).toBe('crown');
    expect(hingeShape([20, 990], 0, 1000)).toBe('hollow');
    expect(hingeShape([], 0, 1000)).toBeNull();
  });
});
