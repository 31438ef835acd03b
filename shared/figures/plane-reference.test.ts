import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adjustedHeights } from '../../tests/tools/adjusted-heights.ts';
import { expectClose } from '../../tests/tools/expect-close.ts';
import { areaOf } from './area.ts';
import { type PlaneReferenceKind, planeBelow, planeReference } from './plane-reference.ts';
import { departureHeights, departuresFrom, rangeFrom } from './reference.ts';

interface Point {
  readonly x: number;
  readonly y: number;
  readonly h: number;
}

function survey(points: readonly Point[]) {
  const adjusted = adjustedHeights({
    xMm: points.map(({ x }) => x),
    yMm: points.map(({ y }) => y),
    heightUm: points.map(({ h }) => h),
  });
  const area = areaOf(adjusted);
  return {
    area,
    adjusted,
    departures: (kind: PlaneReferenceKind) => departureHeights(adjusted, planeReference(kind, area)),
    range: (kind: PlaneReferenceKind) => rangeFrom(adjusted, planeReference(kind, area)),
  };
}

const point = fc.record({
  x: fc.integer({ min: 0, max: 6 }),
  y: fc.integer({ min: 0, max: 6 }),
  h: fc.integer({ min: -9, max: 9 }),
});
const points = fc.array(point, { minLength: 1, maxLength: 24 });

test('three stations lie on their plane; so do any number that are coplanar', () => {
  const three = survey([
    { x: 0, y: 0, h: 4 },
    { x: 100, y: 0, h: -7 },
    { x: 30, y: 80, h: 1 },
  ]);
  expect(three.range('minimumZone').valueUm).toBeLessThan(1e-12);
  const grid = Array.from({ length: 12 }, (_, k) => ({ x: k % 4, y: Math.floor(k / 4) }));
  const plane = survey(grid.map(({ x, y }) => ({ x, y, h: 3 * x - 7 * y + 100 })));
  expect(plane.range('minimumZone').valueUm).toBeLessThan(1e-11);
});

test('stations on one line in plan are measured as that line, at one place as a level', () => {
  const line = survey([0, 3, 9, 6, 5, 2, 6].map((h, k) => ({ x: 30 * k, y: 40 * k, h })));
  expect(line.area.extent).toBe('line');
  expect(line.range('minimumZone').valueUm).toBeCloseTo(8.2, 9);
  const place = survey([1, 4, 2].map((h) => ({ x: 5, y: 5, h })));
  expect(place.area.extent).toBe('point');
  expectClose(place.departures('minimumZone'), [-1.5, 1.5, -0.5], 12);
});

// a saddle: two high corners opposite, two low: zone of type 2–2, all four corners share it equally
test('four corners: height of each against their mean plane, uncertainty in closed form', () => {
  const { range } = survey([
    { x: 0, y: 0, h: 1 },
    { x: 200, y: 0, h: -1 },
    { x: 0, y: 100, h: -1 },
    { x: 200, y: 100, h: 1 },
  ]);
  for (const kind of ['leastSquares', 'minimumZone'] as const) {
    expect(range(kind).valueUm).toBeCloseTo(2, 12);
    expect(range(kind).uUm).toBeCloseTo(1, 12);
  }
});

test('a plane of independent heights: Σ of variances of departures is n − 3', () => {
  const { adjusted, area } = survey(
    Array.from({ length: 20 }, (_, k) => ({ x: k % 5, y: (k * k) % 7, h: (k * 37) % 11 })),
  );
  const { uUm } = departuresFrom(adjusted, planeReference('leastSquares', area));
  expect(uUm.reduce((sum, u) => sum + u * u, 0)).toBeCloseTo(17, 9);
});

describe('properties of planes, whatever the degeneracy', () => {
  test('the minimum zone is never wider than least squares, and holds every station', () => {
    fc.assert(
      fc.property(points, (set) => {
        const { range, departures } = survey(set);
        const zone = range('minimumZone');
        expect(zone.valueUm).toBeLessThanOrEqual(range('leastSquares').valueUm + 1e-9);
        for (const departure of departures('minimumZone')) {
          expect(Math.abs(departure)).toBeLessThanOrEqual(zone.valueUm / 2 + 1e-9);
        }
        expect(Number.isFinite(zone.uUm)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test('lifting and tilting changes no width', () => {
    fc.assert(
      fc.property(
        points,
        fc.integer({ min: -99, max: 99 }),
        fc.integer({ min: -99, max: 99 }),
        (set, a, b) => {
          const plain = survey(set);
          const tilted = survey(set.map(({ x, y, h }) => ({ x, y, h: h + 1000 + a * x + b * y })));
          for (const kind of ['leastSquares', 'minimumZone'] as const) {
            expect(tilted.range(kind).valueUm).toBeCloseTo(plain.range(kind).valueUm, 8);
          }
        },
      ),
    );
  });

  test('the order of the stations, turning and mirroring the plate change no width', () => {
    fc.assert(
      fc.property(points, (set) => {
        const width = survey(set).range('minimumZone').valueUm;
        const others = [
          [...set].reverse(),
          set.map(({ x, y, h }) => ({ x: y, y: x, h: -h })),
          set.map(({ x, y, h }) => ({ x: 0.6 * x - 0.8 * y, y: 0.8 * x + 0.6 * y, h })),
        ];
        for (const other of others) expect(survey(other).range('minimumZone').valueUm).toBeCloseTo(width, 8);
      }),
    );
  });

  test('the plane below is nowhere above the metal and touches it', () => {
    fc.assert(
      fc.property(points, (set) => {
        const { area, adjusted } = survey(set);
        if (area.extent !== 'plane') return;
        const above = departureHeights(adjusted, planeBelow(area));
        expect(Math.min(...above)).toBeCloseTo(0, 9);
      }),
    );
  });

  test('from nanometres to metres', () => {
    fc.assert(
      fc.property(points, fc.constantFrom(1e-6, 1e6), fc.constantFrom(1e-3, 1e3), (set, height, length) => {
        const width = survey(set).range('minimumZone').valueUm;
        const scaled = survey(set.map(({ x, y, h }) => ({ x: x * length, y: y * length, h: h * height })));
        expect(scaled.range('minimumZone').valueUm / height).toBeCloseTo(width, 8);
      }),
    );
  });
});
