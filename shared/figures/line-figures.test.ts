import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustedHeights, indices, walkCovariance } from '../../tests/tools/adjusted-heights.ts';
import { expectClose } from '../../tests/tools/expect-close.ts';
import { isWayscribeError } from '../errors.ts';
import { lineOf } from './line.ts';
import { lineFigures, type StationHeight } from './line-figures.ts';
import { type ReferenceKind, referenceKinds } from './reference.ts';

function figures(heightUm: number[], xMm = heightUm.map((_, k) => 100 * k), kind: ReferenceKind = 'ends') {
  const adjusted = adjustedHeights({ xMm, heightUm });
  return lineFigures(adjusted, lineOf(adjusted, indices(heightUm.length)), kind);
}

const heightsOf = (stations: Readonly<Record<string, StationHeight>>) =>
  Object.values(stations).map(({ heightUm }) => heightUm);

// σ·L·√(k(n − k)/n): the end line taken off a walk of n independent steps; follows from Var(h_k) = k·u².
test('one walk of equal steps: closed form of the uncertainty against the end line', () => {
  const steps = 10;
  const u = 0.1;
  const adjusted = adjustedHeights({
    xMm: indices(steps + 1).map((k) => 100 * k),
    heightUm: indices(steps + 1).map((k) => Math.sin(k)),
    covarianceUm2: walkCovariance(steps, u),
  });
  const { stations } = lineFigures(adjusted, lineOf(adjusted, indices(steps + 1)), 'ends');
  expectClose(
    Object.values(stations).map(({ uUm }) => uUm),
    indices(steps + 1).map((k) => u * Math.sqrt((k * (steps - k)) / steps)),
    12,
  );
  expect(stations.F5!.uUm).toBeCloseTo(0.1581, 4);
  expect(stations.F0).toEqual({ heightUm: 0, uUm: 0 });
  expect(stations.F10!.uUm).toBe(0);
});

test('against its own ends the ends are certain, wherever the datum is', () => {
  const factors = [0.1, 0.3, 0.7, 1.1].map((a, i) => [a, 1 / (3 + i), Math.sqrt(2 + i), 100]);
  const covarianceUm2 = factors.map((p) => factors.map((q) => p.reduce((sum, f, j) => sum + f * q[j]!, 0)));
  const adjusted = adjustedHeights({
    xMm: [0, 33.3, 77.7, 120.1],
    heightUm: [1.1, 2.3, -4.7, 0.9],
    covarianceUm2,
  });
  // variances and covariances come out of an adjustment by different roads, equal but for rounding
  const rounded = {
    ...adjusted,
    varianceUm2: adjusted.varianceUm2.map((variance) => variance * (1 + 1e-15)),
  };
  const { stations } = lineFigures(rounded, lineOf(rounded, indices(4)), 'ends');
  expect(stations.F0!.uUm).toBe(0);
  expect(stations.F3!.uUm).toBe(0);
  expect(stations.F1!.uUm).toBeGreaterThan(0);
});

test('independent heights of 1 µm: the uncertainty of each straightness in closed form', () => {
  const { straightness } = figures([0, 0, 6, 0, 0]);
  expect(straightness.ends).toEqual({ valueUm: 6, uUm: Math.sqrt(1 + 0.5), highest: 'F2', lowest: 'F0' });
  expect(straightness.minimumZone.uUm).toBeCloseTo(Math.sqrt(1.5), 12);
  // least squares: the mean cancels, the slope acts over the distance of the two stations
  expect(straightness.leastSquares.uUm).toBeCloseTo(Math.sqrt(2 - 4 / 10), 12);
});

test('two stations are straight, exactly', () => {
  for (const kind of referenceKinds) {
    expect(figures([3, 8]).straightness[kind]).toMatchObject({ valueUm: 0, uUm: 0 });
  }
});

test('two stations at one place of a line: the zone holds both', () => {
  const { straightness } = figures([0, 5, 0, 1], [0, 0, 50, 100]);
  expect(straightness.minimumZone.valueUm).toBeCloseTo(5, 12);
});

test('a line that ends where it began is refused by name', () => {
  const adjusted = adjustedHeights({ xMm: [0, 100, 0], heightUm: [0, 1, 2] });
  try {
    lineOf(adjusted, [0, 1, 2], 'lines.front');
    expect.unreachable();
  } catch (error) {
    expect(isWayscribeError(error, 'sheet.invalid')).toBe(true);
    expect((error as Error).message).toContain('lines.front');
  }
  expect(() => lineOf(adjusted, [0])).toThrow('two stations');
});

const heights = fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 3, maxLength: 14 });

describe('properties of straightness', () => {
  test('no reference is narrower than the minimum zone, and every value is finite', () => {
    fc.assert(
      fc.property(heights, (line) => {
        const { ends, leastSquares, minimumZone } = figures(line).straightness;
        expect(minimumZone.valueUm).toBeLessThanOrEqual(leastSquares.valueUm + 1e-9);
        expect(minimumZone.valueUm).toBeLessThanOrEqual(ends.valueUm + 1e-9);
        expect(minimumZone.valueUm).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  test('heights against the minimum zone reach half of it to both sides', () => {
    fc.assert(
      fc.property(heights, (line) => {
        const { straightness, stations } = figures(line, undefined, 'minimumZone');
        const half = straightness.minimumZone.valueUm / 2;
        expect(Math.max(...heightsOf(stations))).toBeCloseTo(half, 9);
        expect(Math.min(...heightsOf(stations))).toBeCloseTo(-half, 9);
      }),
    );
  });

  test('lifting and tilting a line changes nothing', () => {
    fc.assert(
      fc.property(
        heights,
        fc.integer({ min: -1000, max: 1000 }),
        fc.integer({ min: -200, max: 200 }),
        (line, lift, tilt) => {
          const plain = figures(line);
          const moved = figures(line.map((height, k) => height + lift + tilt * k));
          for (const kind of referenceKinds) {
            expect(moved.straightness[kind].valueUm).toBeCloseTo(plain.straightness[kind].valueUm, 8);
          }
          expectClose(heightsOf(moved.stations), heightsOf(plain.stations), 8);
          expect(moved.shape).toBe(plain.shape);
        },
      ),
    );
  });

  test('mirrored metal has mirrored words and the same straightness', () => {
    const mirrored = { crown: 'hollow', hollow: 'crown' } as Record<string, string>;
    fc.assert(
      fc.property(heights, (line) => {
        const plain = figures(line);
        const turned = figures(line.map((height) => -height));
        expect(turned.shape).toBe(mirrored[plain.shape] ?? plain.shape);
        for (const kind of referenceKinds) {
          expect(turned.straightness[kind].valueUm).toBeCloseTo(plain.straightness[kind].valueUm, 9);
        }
      }),
    );
  });

  test('scale scales, from nanometres to metres', () => {
    fc.assert(
      fc.property(heights, fc.constantFrom(1e-6, 1e-3, 1e3, 1e6), (line, scale) => {
        const plain = figures(line).straightness;
        const scaled = figures(line.map((height) => height * scale)).straightness;
        for (const kind of referenceKinds) {
          expect(scaled[kind].valueUm / scale).toBeCloseTo(plain[kind].valueUm, 8);
        }
      }),
    );
  });

  test('walking it the other way changes nothing', () => {
    fc.assert(
      fc.property(heights, (line) => {
        const forth = figures(line).straightness;
        const back = figures([...line].reverse()).straightness;
        for (const kind of referenceKinds) {
          expect(back[kind].valueUm).toBeCloseTo(forth[kind].valueUm, 9);
        }
      }),
    );
  });
});
