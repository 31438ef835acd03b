import { neighboursOf } from './neighbours.ts';
import { type Observations, rowWidth } from './observations.ts';

/**
 * A tree that says in which order to eliminate the unknowns so that little fills up.
 *
 * Nested dissection by coordinates: the stations are halved along their longer side; those of one half that
 * share a reading with the other half separate the two, and are eliminated after both. A station's
 * artefact errors go with it. Every other unknown (zero, offset …) goes with the smallest region that
 * holds all of its readings, last in it.
 *
 * Nodes are numbered so that a parent follows its children. Node k eliminates the unknowns
 * `order[start[k]] … order[start[k + 1] - 1]`.
 */
export interface Dissection {
  readonly order: Int32Array;
  readonly start: Int32Array;
  /** Parent of each node, -1 for the root. */
  readonly parent: Int32Array;
}

/** Regions of at most so many stations are eliminated in one go. */
const leafStations = 8;

export function dissect(observations: Observations): Dissection {
  const { stationNames, nuisances, xMm, yMm } = observations;
  const n = stationNames.length;
  const neighbours = neighboursOf(observations);
  const station = Int32Array.from({ length: n }, (_, k) => k);
  const region = new Int32Array(n);
  const nodeStations: [from: number, to: number][] = [];
  const parent: number[] = [];
  let regions = 0;

  const node = (from: number, to: number, children: readonly number[]): number => {
    const id = nodeStations.length;
    nodeStations.push([from, to]);
    parent.push(-1);
    for (const child of children) parent[child] = id;
    return id;
  };

  /** Moves the stations of [from, to) for which `first` holds to the front; returns where they end. */
  const partition = (from: number, to: number, first: (k: number) => boolean): number => {
    let end = from;
    for (let i = from; i < to; i++) {
      const k = station[i]!;
      if (!first(k)) continue;
      station[i] = station[end]!;
      station[end++] = k;
    }
    return end;
  };

  const split = (from: number, to: number): number => {
    if (to - from <= leafStations) return node(from, to, []);
    const middle = halve(from, to);
    const left = ++regions;
    for (let i = from; i < middle; i++) region[station[i]!] = left;
    const right = ++regions;
    for (let i = middle; i < to; i++) region[station[i]!] = right;
    // The stations of either half that touch the other would do: the fewer, the better.
    if (touching(from, middle, right) <= touching(middle, to, left)) {
      const inner = partition(from, middle, (k) => !touches(k, right));
      return node(inner, middle, [...splitAny(from, inner), split(middle, to)]);
    }
    const outer = partition(middle, to, (k) => touches(k, left));
    return node(middle, outer, [split(from, middle), ...splitAny(outer, to)]);
  };

  const splitAny = (from: number, to: number): number[] => (to > from ? [split(from, to)] : []);

  /** Whether station k shares a tilt with one of the region. */
  const touches = (k: number, other: number): boolean => {
    for (let i = neighbours.start[k]!; i < neighbours.start[k + 1]!; i++) {
      if (region[neighbours.list[i]!] === other) return true;
    }
    return false;
  };

  const touching = (from: number, to: number, other: number): number => {
    let sum = 0;
    for (let i = from; i < to; i++) if (touches(station[i]!, other)) sum++;
    return sum;
  };

  /** Halves [from, to) at the middle of its longer side; by number when all stand at one place. */
  const halve = (from: number, to: number): number => {
    let [x0, x1, y0, y1] = [
      xMm[station[from]!]!,
      xMm[station[from]!]!,
      yMm[station[from]!]!,
      yMm[station[from]!]!,
    ];
    for (let i = from + 1; i < to; i++) {
      const x = xMm[station[i]!]!;
      const y = yMm[station[i]!]!;
      if (x < x0) x0 = x;
      else if (x > x1) x1 = x;
      if (y < y0) y0 = y;
      else if (y > y1) y1 = y;
    }
    const [along, low, high] = x1 - x0 >= y1 - y0 ? [xMm, x0, x1] : [yMm, y0, y1];
    const half = low + (high - low) / 2;
    const middle = partition(from, to, (k) => along[k]! <= half);
    return middle < to ? middle : from + ((to - from) >> 1);
  };

  split(0, n);
  return withNuisances(observations, station, nodeStations, Int32Array.from(parent), nuisances.length);
}

function withNuisances(
  { stationNames, count, unknown, nuisances }: Observations,
  station: Int32Array,
  nodeStations: readonly [from: number, to: number][],
  parent: Int32Array,
  nuisanceCount: number,
): Dissection {
  const n = stationNames.length;
  const nodeOf = new Int32Array(n + nuisanceCount).fill(-1);
  nodeStations.forEach(([from, to], node) => {
    for (let i = from; i < to; i++) nodeOf[station[i]!] = node;
  });
  /** The smallest node whose region holds both: a parent always has the larger number. */
  const common = (a: number, b: number) => {
    let [low, high] = [a, b];
    while (low !== high) {
      if (low < high) low = parent[low]!;
      else high = parent[high]!;
    }
    return low;
  };
  for (let row = 0; row < count; row++) {
    let node = -1;
    for (let i = rowWidth * row; i < rowWidth * (row + 1); i++) {
      const k = unknown[i]!;
      if (k < 0) continue;
      if (k < n) node = node < 0 ? nodeOf[k]! : common(node, nodeOf[k]!);
      else nodeOf[k] = nodeOf[k]! < 0 ? node : common(node, nodeOf[k]!);
    }
  }

  const start = new Int32Array(nodeStations.length + 1);
  for (const node of nodeOf) start[node + 1]!++;
  for (let node = 0; node < nodeStations.length; node++) start[node + 1]! += start[node]!;
  const order = new Int32Array(n + nuisanceCount);
  const next = start.slice();
  const place = (k: number) => {
    order[next[nodeOf[k]!]!++] = k;
  };
  nuisances.forEach(({ station: at }, k) => {
    if (at !== undefined) place(n + k);
  });
  for (const k of station) place(k);
  nuisances.forEach(({ station: at }, k) => {
    if (at === undefined) place(n + k);
  });
  return { order, start, parent };
}
