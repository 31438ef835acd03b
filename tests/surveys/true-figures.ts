import type { Result } from '../../shared/sheet/result.ts';
import type { Plan } from '../../shared/survey/plan.ts';

/** A number of a result with what a perfect survey would find. */
export interface Judged {
  readonly name: string;
  readonly value: number;
  readonly u: number;
  readonly truth: number;
}

/**
 * Every number of a result beside the truth, worked out from the true heights by hand-sized arithmetic of its own:
 * stations against the line through the ends of their line, and the figures of the kind.
 */
export function judged(plan: Plan, truth: Record<string, number>, result: Result): Judged[] {
  const lines =
    result.kind === 'repeat'
      ? overTheirMean(truth, result)
      : Object.entries(plan.lines).flatMap(([line, names]) => ofLine(plan, truth, result, line, names));
  return lines.concat(
    Object.entries(result.figures).map(([name, { value, u }]) => {
      return { name, value, u, truth: trueFigure(name, plan, truth) };
    }),
  );
}

/** Repeat readings have no line of their own: they are told over the mean of all. */
function overTheirMean(truth: Record<string, number>, { stations }: Result): Judged[] {
  const names = Object.keys(stations);
  const mean = names.reduce((sum, name) => sum + truth[name]!, 0) / names.length;
  return names.map((name) => {
    const { heightUm, uUm } = stations[name]!;
    return { name, value: heightUm, u: uUm, truth: truth[name]! - mean };
  });
}

function ofLine(
  plan: Plan,
  truth: Record<string, number>,
  { lines }: Result,
  line: string,
  names: readonly string[],
): Judged[] {
  const { straightness, stations } = lines[line]!;
  const heights = names.map((name) => truth[name]!);
  const ends = fromEnds(alongMm(plan, names), heights);
  const { valueUm, uUm } = straightness.ends;
  return names
    .map((name, k) => {
      const { heightUm, uUm } = stations[name]!;
      return { name: `${line} ${name}`, value: heightUm, u: uUm, truth: ends[k]! };
    })
    .concat([{ name: `${line} straightness`, value: valueUm, u: uUm, truth: range(ends) }]);
}

function trueFigure(name: string, plan: Plan, truth: Record<string, number>): number {
  const [first, second] = Object.values(plan.lines);
  const line = Object.keys(plan.lines).find((candidate) => name.startsWith(`${candidate}.`));
  const names = line === undefined ? first! : plan.lines[line]!;
  const heights = names.map((station) => truth[station]!);
  const along = alongMm(plan, names);
  switch (line === undefined ? name : name.slice(line.length + 1)) {
    case 'parallelism':
      return range(heights);
    case 'taper':
      return slope(along, heights) * along.at(-1)!;
    case 'repeatReading':
      return range(Object.values(truth));
    case 'axisSlope':
      return 500 * slope(along, heights);
    case 'hollow':
      return hollow(heights);
    case 'crossSlideSquareness':
      return (2000 * hollow(heights)) / along.at(-1)!;
    case 'slope':
    case 'squareness':
      return 1000 * slope(along, heights);
    case 'twist':
      return range(crossSlopes(plan, truth, first!, second!));
    case 'twistRate':
      return 1000 * slope(along, crossSlopes(plan, truth, first!, second!));
    case 'wind': {
      const [a, b, c, d] = [first!.at(0), first!.at(-1), second!.at(0), second!.at(-1)].map(
        (k) => truth[k!]!,
      );
      return d! - c! - (b! - a!);
    }
    case 'flatness.leastSquares':
      return flatness(plan, truth);
    case 'flatness.minimumZone':
      return minimumZoneWidth(plan, truth);
    default:
      throw new Error(`no truth is known for ${name}`);
  }
}

/** How far the middle one of an odd number of even places lies below the line through the ends. */
function hollow(heights: readonly number[]): number {
  return (heights[0]! + heights.at(-1)!) / 2 - heights[(heights.length - 1) / 2]!;
}

function crossSlopes(
  plan: Plan,
  truth: Record<string, number>,
  first: readonly string[],
  second: readonly string[],
) {
  const gaugeMm = plan.stations.find(({ name }) => name === second[0])!.yMm;
  return first.map((name, k) => (1000 * (truth[second[k]!]! - truth[name]!)) / gaugeMm);
}

function alongMm({ stations }: Plan, names: readonly string[]): number[] {
  const places = names.map((name) => stations.find((station) => station.name === name)!);
  const [start] = places;
  return places.map(({ xMm, yMm }) => Math.hypot(xMm - start!.xMm, yMm - start!.yMm));
}

function fromEnds(along: readonly number[], heights: readonly number[]): number[] {
  const [a, b] = [heights[0]!, heights.at(-1)!];
  return heights.map((height, k) => height - a - ((b - a) * along[k]!) / along.at(-1)!);
}

/** Range of the departures from the least-squares plane, by Gram and Schmidt. */
function flatness({ stations }: Plan, truth: Record<string, number>): number {
  const columns = [stations.map(() => 1), stations.map(({ xMm }) => xMm), stations.map(({ yMm }) => yMm)];
  const basis: number[][] = [];
  const without = (values: readonly number[], vector: readonly number[]) => {
    const share = dot(values, vector) / dot(vector, vector);
    return values.map((value, k) => value - share * vector[k]!);
  };
  for (const column of columns) basis.push(basis.reduce(without, column));
  return range(
    basis.reduce(
      without,
      stations.map(({ name }) => truth[name]!),
    ),
  );
}

/**
 * Least distance between two parallel planes that hold all stations, by brute force: over every plane through three
 * stations and every pair of planes through two and two, as one of these is always the best.
 */
function minimumZoneWidth({ stations }: Plan, truth: Record<string, number>): number {
  const points = stations.map(({ name, xMm, yMm }) => ({ x: xMm, y: yMm, h: truth[name]! }));
  const n = points.length;
  let least = Number.POSITIVE_INFINITY;
  const tryPlane = (dx1: number, dy1: number, dh1: number, dx2: number, dy2: number, dh2: number) => {
    const area = dx1 * dy2 - dx2 * dy1;
    if (Math.abs(area) < 1e-6) return;
    const a = (dh1 * dy2 - dh2 * dy1) / area;
    const b = (dx1 * dh2 - dx2 * dh1) / area;
    least = Math.min(least, range(points.map(({ x, y, h }) => h - a * x - b * y)));
  };
  // Two edges span every candidate: of one plane when they meet, of two parallel ones when they do not.
  const edges: (readonly [number, number, number])[] = [];
  for (let i = 0; i < n; i += 1) {
    for (let k = 0; k < i; k += 1) {
      const [p, q] = [points[i]!, points[k]!];
      edges.push([p.x - q.x, p.y - q.y, p.h - q.h]);
    }
  }
  edges.forEach((one, i) => {
    for (const two of edges.slice(i + 1)) tryPlane(...one, ...two);
  });
  return least;
}

function slope(x: readonly number[], y: readonly number[]): number {
  const mean = x.reduce((sum, value) => sum + value, 0) / x.length;
  const centred = x.map((value) => value - mean);
  return dot(centred, y) / dot(centred, centred);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, k) => sum + value * b[k]!, 0);
}

function range(values: readonly number[]): number {
  return Math.max(...values) - Math.min(...values);
}
