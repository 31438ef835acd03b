import { areaOf } from '../../shared/figures/area.ts';
import { lineMinimumZone } from '../../shared/figures/line-minimum-zone.ts';
import { planeReference } from '../../shared/figures/plane-reference.ts';
import { adjustedHeights } from '../tools/adjusted-heights.ts';
import { random } from '../tools/random.ts';
import { slabSolver } from '../tools/slab-programme.ts';

/** One row of the bench: a median, and where two programs are compared the ratio of the other's median to ours. */
export interface BenchRow {
  readonly name: string;
  readonly medianMs: number;
  readonly ratio?: number;
  readonly target: string;
}

const RUNS = 9;
const SLOW_RUNS = 5;

function medianMs(runs: number, work: () => void): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    work();
    return performance.now() - start;
  });
  return times.sort((a, b) => a - b)[runs >> 1]!;
}

/** A noisy bow of 100,000 points, and one whose points are all on the hull. */
function lines() {
  const noise = random(1);
  const x = Float64Array.from({ length: 100_000 }, (_, k) => k);
  const bow = x.map((place) => 1e-8 * (place - 50_000) ** 2);
  return { x, noisy: bow.map((height) => height + noise.normal()), bow };
}

/** A noisy dish with wind on 100 × 100 stations. */
function plate() {
  const noise = random(2);
  const places = Array.from({ length: 10_000 }, (_, k) => [k % 100, Math.floor(k / 100)] as const);
  const xMm = places.map(([x]) => x);
  const yMm = places.map(([, y]) => y);
  const heightUm = places.map(([x, y]) => noise.normal() + 1e-3 * (x - 50) ** 2 + 5e-4 * x * y);
  return adjustedHeights({ xMm, yMm, heightUm });
}

/** Minimum zones of large lines and planes, the plane against a linear programme of the same points. */
export async function minimumZoneRows(): Promise<BenchRow[]> {
  const { x, noisy, bow } = lines();
  const heights = plate();
  const programme = await slabSolver();
  const scaled = scaledPoints(areaOf(heights));

  lineMinimumZone(x, noisy);
  planeReference('minimumZone', areaOf(heights));
  const plane = medianMs(RUNS, () => planeReference('minimumZone', areaOf(heights)));
  const byProgramme = medianMs(SLOW_RUNS, () => programme(scaled, { mean: 0, most: 1 }));
  return [
    {
      name: 'minimum zone, line of 100,000, noisy',
      medianMs: medianMs(RUNS, () => lineMinimumZone(x, noisy)),
      target: '≤ 60 ms',
    },
    {
      name: 'minimum zone, line of 100,000, all on the hull',
      medianMs: medianMs(RUNS, () => lineMinimumZone(x, bow)),
      target: '≤ 60 ms',
    },
    { name: 'minimum zone, plane of 10,000', medianMs: plane, target: '≤ 6 ms' },
    {
      name: 'minimum zone, plane of 10,000, linear programme by HiGHS',
      medianMs: byProgramme,
      ratio: byProgramme / plane,
      target: 'at least 50 times ours',
    },
  ];
}

/** The solver's tolerances are absolute, so it gets places and heights of about ±1. */
function scaledPoints({ uMm, vMm, heightUm }: ReturnType<typeof areaOf>) {
  const unit = (values: Float64Array) => {
    const size = values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
    return values.map((value) => value / size);
  };
  return { x: unit(uMm), y: unit(vMm), h: unit(heightUm) };
}
