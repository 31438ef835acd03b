import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoSetups } from '../session/demo-setups.ts';
import { setupSchema } from '../session/setup.ts';
import { planFor } from './plan-for.ts';

const plate = { ...demoSetups.plate, lengthMm: 630, widthMm: 400, borderMm: 20, baseMm: 60 };
const problemsOf = (given: object) => setupSchema.safeParse({ ...plate, ...given }).error?.issues ?? [];

test('a plate of which nothing is left inside the border is refused, with what would be right', () => {
  expect(problemsOf({ borderMm: 199 })).toEqual([]);
  expect(problemsOf({ borderMm: 200 })).toMatchObject([
    {
      path: ['borderMm'],
      message: 'nothing of the plate is left inside a border of 200 mm; it must be below 200 mm',
    },
  ]);
});

test('a foot spacing so short that no one could walk the plate is refused before any station is made', () => {
  for (const pattern of ['eight lines', 'grid']) {
    for (const baseMm of [1e-300, 1e-7, 0.01, 0.5]) {
      expect(problemsOf({ pattern, baseMm }), `${pattern} ${baseMm}`).toMatchObject([{ path: ['baseMm'] }]);
    }
  }
  expect(problemsOf({ diagonalBaseMm: 1e-9 })).toMatchObject([{ path: ['baseMm'] }]);
});

test('whatever plate is accepted has a plan of bounded size, with every station on the plate', () => {
  const size = fc.record({
    lengthMm: fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
    widthMm: fc.double({ min: 1e-3, max: 1e5, noNaN: true }),
    borderMm: fc.double({ min: 0, max: 1e4, noNaN: true }),
    baseMm: fc.double({ min: 1e-9, max: 1e4, noNaN: true }),
    pattern: fc.constantFrom('eight lines', 'grid'),
  });
  let accepted = 0;
  fc.assert(
    fc.property(size, (given) => {
      const parsed = setupSchema.safeParse({ ...plate, ...given });
      if (!parsed.success) return;
      accepted += 1;
      const { stations } = planFor(parsed.data);
      expect(stations.length).toBeLessThanOrEqual(8 * 1000);
      for (const { xMm, yMm } of stations) {
        expect(Math.min(xMm, yMm)).toBeGreaterThanOrEqual(-1e-12 * given.lengthMm);
        expect(xMm).toBeLessThanOrEqual(given.lengthMm * (1 + 1e-12));
        expect(yMm).toBeLessThanOrEqual(given.widthMm * (1 + 1e-12));
      }
    }),
    { seed: 17, numRuns: 500 },
  );
  expect(accepted).toBeGreaterThan(20);
});
