import { beforeAll, describe, expect, test } from 'vitest';
import { areaOf } from '../../shared/figures/area.ts';
import { lineMinimumZone } from '../../shared/figures/line-minimum-zone.ts';
import { planeBelow, planeReference } from '../../shared/figures/plane-reference.ts';
import { departureHeights } from '../../shared/figures/reference.ts';
import { lineBelow } from '../../shared/metal/line-below.ts';
import { adjustedHeights } from '../tools/adjusted-heights.ts';
import { type Random, random } from '../tools/random.ts';
import { type SlabSolver, slabSolver } from '../tools/slab-programme.ts';

// Outside: the linear-programme solver HiGHS (npm `highs`), an implementation that shares nothing with this one.

interface PointSet {
  x: number[];
  y: number[];
  h: number[];
}

/** Kinds of point sets in turn; all of about ±1. */
const makers: readonly ((r: Random, n: number) => PointSet)[] = [
  // anywhere
  (r, n) => fill(n, () => [2 * r.next() - 1, 2 * r.next() - 1, 2 * r.next() - 1]),
  // coarse grid, coarse heights: ties, duplicates in plan, coplanar subsets
  (r, n) => fill(n, () => [r.below(4) / 2 - 0.75, r.below(4) / 2 - 0.75, r.below(5) / 2 - 1]),
  // full grid, few heights
  (r) => grid(2 + r.below(4), 2 + r.below(4), () => r.below(3) - 1),
  // a grid with a steep tilt of its own
  (r) => grid(3, 3 + r.below(3), (x, y) => 0.3 * x - 0.7 * y + 0.01 * r.normal()),
  // all on one plane but for one
  (r, n) => {
    const set = fill(n, () => {
      const x = 2 * r.next() - 1;
      const y = 2 * r.next() - 1;
      return [x, y, 0.5 * x - 0.25 * y];
    });
    set.h[r.below(n)]! += 0.125;
    return set;
  },
  // two lines: many collinear points
  (r, n) => fill(n, (k) => [k / n - 0.5, k % 2 === 0 ? -0.5 : 0.5, r.normal() / 3]),
  // dish and saddle on a grid: the middle station is the middle of the stations
  (r) => {
    const sag = r.next() - 0.5;
    const twist = r.next() - 0.5;
    return grid(5, 5, (x, y) => sag * (x * x + y * y) + twist * x * y);
  },
  // nearly one line in plan
  (r, n) => fill(n, (k) => [k / n - 0.5, 1e-3 * (r.next() - 0.5), r.normal() / 3]),
];

function fill(n: number, one: (k: number) => number[]): PointSet {
  const points = Array.from({ length: n }, (_, k) => one(k));
  return { x: points.map((p) => p[0]!), y: points.map((p) => p[1]!), h: points.map((p) => p[2]!) };
}

function grid(columns: number, rows: number, height: (x: number, y: number) => number): PointSet {
  return fill(columns * rows, (k) => {
    const x = (2 * (k % columns)) / (columns - 1) - 1;
    const y = (2 * Math.floor(k / columns)) / (rows - 1) - 1;
    return [x, y, height(x, y)];
  });
}

/** 300 sets of 4 to 40 points. */
const sets = Array.from({ length: 300 }, (_, i) => {
  const r = random(1000 + i);
  return makers[i % makers.length]!(r, 4 + r.below(37));
});

let programme: SlabSolver;
beforeAll(async () => {
  programme = await slabSolver();
});

/** 1e-9 of the size of the heights, which are about ±1. */
function agree(value: number, expected: number, name: string) {
  expect(Math.abs(value - expected), `${name}: ${value} against ${expected}`).toBeLessThan(1e-9);
}

function surveyOf({ x, y, h }: PointSet) {
  const adjusted = adjustedHeights({ xMm: x, yMm: y, heightUm: h });
  return { adjusted, area: areaOf(adjusted) };
}

const spread = (values: Float64Array) => Math.max(...values) - Math.min(...values);

describe('300 random and degenerate sets', () => {
  test('nearly all of them spread over a plane, the thin ones too', () => {
    expect(sets.filter((set) => surveyOf(set).area.extent === 'plane').length).toBeGreaterThan(295);
  });

  test('minimum-zone plane: width', () => {
    sets.forEach((set, i) => {
      const { adjusted, area } = surveyOf(set);
      if (area.extent !== 'plane') return;
      const width = spread(departureHeights(adjusted, planeReference('minimumZone', area)));
      agree(width, programme(set, { mean: 0, most: 1 }), `set ${i}`);
    });
  });

  test('plane below: nowhere above the points, least in total, least deep among equals', () => {
    sets.forEach((set, i) => {
      const { adjusted, area } = surveyOf(set);
      if (area.extent !== 'plane') return;
      const above = departureHeights(adjusted, planeBelow(area));
      expect(Math.min(...above), `set ${i}`).toBeGreaterThan(-1e-12);
      agree(mean(above), programme(set, { mean: 1, most: 0 }), `set ${i}`);
    });
  });

  test('minimum-zone line: width', () => {
    sets.forEach((set, i) => {
      const line = { x: set.x, y: set.x.map(() => 0), h: set.h };
      const zone = lineMinimumZone(line.x, line.h);
      agree(zone.width, programme(line, { mean: 0, most: 1 }), `set ${i}`);
    });
  });

  test('line below: nowhere above the points, least in total', () => {
    sets.forEach((set, i) => {
      const line = { x: set.x, y: set.x.map(() => 0), h: set.h };
      const { through, slope } = lineBelow(line.x, line.h);
      const [from, to] = slope;
      const rise = (line.h[to]! - line.h[from]!) / (line.x[to]! - line.x[from]!);
      const above = line.h.map((h, k) => h - line.h[through]! - rise * (line.x[k]! - line.x[through]!));
      expect(Math.min(...above), `set ${i}`).toBeGreaterThan(-1e-12);
      agree(mean(above), programme(line, { mean: 1, most: 0 }), `set ${i}`);
    });
  });
});

test('a dish: of all planes under its middle the level one cuts least deep', () => {
  const dish = grid(5, 5, (x, y) => 0.5 * (x * x + y * y));
  const { adjusted, area } = surveyOf(dish);
  const above = departureHeights(adjusted, planeBelow(area));
  expect(Math.max(...above)).toBeCloseTo(1, 9);
  const total = programme(dish, { mean: 1, most: 0 });
  agree(mean(above) + 1e-3 * Math.max(...above), programme(dish, { mean: 1, most: 1e-3 }), 'dish');
  expect(mean(above)).toBeCloseTo(total, 9);
});

function mean(values: ArrayLike<number>): number {
  let sum = 0;
  for (let k = 0; k < values.length; k++) sum += values[k]!;
  return sum / values.length;
}
