import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isWayscribeError } from '../../shared/errors.ts';
import { reduce } from '../../shared/reduce.ts';
import { resultSchema } from '../../shared/sheet/result.ts';
import { parseSheet } from '../../shared/sheet/sheet.ts';
import { randomSheet } from './random-sheet.ts';
import { bed } from './sheets.ts';

type Tree = Record<string, unknown>;

/** Every place in a tree as [the object or list that holds it, its key]. */
function placesIn(tree: unknown, found: [Tree, string][] = []): [Tree, string][] {
  if (typeof tree !== 'object' || tree === null) return found;
  for (const [key, value] of Object.entries(tree)) {
    found.push([tree as Tree, key]);
    placesIn(value, found);
  }
  return found;
}

const numbers = fc.oneof(
  fc.constantFrom(0, 1, -1, 200, 1e9, -1e9, 1e6, 1e-6, 1e-9, 1e300, 5e-324),
  fc.double(),
  fc.double({ min: -1e9, max: 1e9 }),
);

const spoilers = fc.oneof(
  fc.constantFrom<unknown>(
    0,
    -1,
    1,
    null,
    '',
    'free',
    'known',
    'F0',
    'P1',
    true,
    [],
    {},
    1e9,
    -1e9,
    1e-9,
    1e300,
    5e-324,
  ),
  fc.double(),
  fc.string(),
  fc.constantFrom('way', 'bed', 'plate', 'slide', 'square', 'bar', 'network'),
);

describe('a sheet spoiled anywhere', () => {
  it('is either refused with a reason or reduced to finite numbers', () => {
    let reduced = 0;
    fc.assert(
      fc.property(
        fc.nat(10_000),
        fc.boolean(),
        fc.array(fc.tuple(fc.nat(), numbers, spoilers), { minLength: 1, maxLength: 3 }),
        (seed, isBed, changes) => {
          const sheet = JSON.parse(
            JSON.stringify(isBed ? bed({ seed, noise: 1, steps: 3 }) : randomSheet(seed)),
          ) as Tree;
          for (const [at, number, value] of changes) {
            const places = placesIn(sheet);
            const [holder, key] = places[at % places.length]!;
            holder[key] = typeof holder[key] === 'number' ? number : value;
          }
          try {
            const result = reduce(parseSheet(JSON.stringify(sheet)));
            const checked = resultSchema.safeParse(result);
            expect(checked.error?.issues ?? []).toEqual([]);
            reduced++;
          } catch (error) {
            if (!isWayscribeError(error)) throw error;
            expect(error.message).not.toMatch(/NaN|undefined|\n/);
          }
        },
      ),
      { numRuns: 1500, seed: 99 },
    );
    expect(reduced).toBeGreaterThan(100);
  });
});

describe('heights that no hand would scrape', () => {
  it('get no plan of millions of passes', () => {
    const sheet = bed({ seed: 1, noise: 1, steps: 4 });
    sheet.walks[0]!.readings[1]![2] = 1e9;
    const { metal, notes } = reduce(sheet);
    expect(metal.front!.plan).toEqual([]);
    expect(notes.join(' ')).toContain('front needs over 1000 passes');
  });
});
