/** One walked line of a plate, as closures see it. */
export interface ClosureLine {
  readonly name: string;
  /** Every station in order, one more than steps. */
  readonly stations: readonly string[];
  /**
   * For each step, how much more this line's own readings let it rise than the joint heights do, µm: the mean over its
   * readings, the zero of the level taken off.
   */
  readonly excessUm: readonly number[];
  /** Standard uncertainty of the rise of one step by these readings, µm. */
  readonly stepUUm: number;
}

/** How well the lines that meet at one station agree there. */
export interface Closure {
  readonly station: string;
  readonly lines: readonly string[];
  /** Greatest less least of the heights that the lines bring here, µm, never negative. */
  readonly closureUm: number;
  /** What the scatter of the level alone makes of it, one standard deviation, µm. */
  readonly uUm: number;
}

/**
 * Where walked lines cross, and whether they close.
 *
 * Each line by itself is a running sum of its own readings. As a whole it is slid up or down until it lies best (least squares) on
 * the joint heights at its crossings; when each line has a zero of its own, it is tilted as well, for that zero is a tilt. Where lines
 * meet, they should now bring one height: the greatest less the least that they bring is the closure of this crossing.
 *
 * A crossing is open, and left out, as long as nothing can fail to close there: a station that only one line has reached twice,
 * or a single loop whose misfit the common zero takes up.
 *
 * The uncertainty is that of a running sum held at both ends, in its middle: step·√n/2 for each of the two lines that differ most.
 *
 * @param zero `shared`: one zero for all lines; `free`: a zero of its own for each
 */
export function closuresOf(lines: readonly ClosureLine[], zero: 'shared' | 'free'): Closure[] {
  const looped = loopsOf(lines);
  if (checks(looped, zero) <= 0) return [];
  const brought = new Map<string, { line: ClosureLine; heightUm: number }[]>();
  for (const [line, crossings] of looped) {
    for (const [station, heightUm] of laidOn(line, crossings, zero)) {
      brought.set(station, [...(brought.get(station) ?? []), { line, heightUm }]);
    }
  }
  return [...brought].map(([station, heights]) => {
    const sorted = heights.toSorted((a, b) => a.heightUm - b.heightUm);
    const [low, high] = [sorted[0]!, sorted.at(-1)!];
    return {
      station,
      lines: heights.map(({ line }) => line.name),
      closureUm: high.heightUm - low.heightUm,
      uUm: Math.hypot(sumUUm(low.line), sumUUm(high.line)),
    };
  });
}

function sumUUm({ stepUUm, excessUm }: ClosureLine): number {
  return (stepUUm * Math.sqrt(excessUm.length)) / 2;
}

/** The lines and the crossings on them that lie on a loop: what hangs on by one end only is taken away, again and again. */
function loopsOf(lines: readonly ClosureLine[]): Map<ClosureLine, string[]> {
  const left = new Map(lines.map((line) => [line, [...line.stations]]));
  for (let before = -1, size = sizeOf(left); size !== before; ) {
    before = size;
    const visits = new Map<string, number>();
    for (const stations of left.values())
      for (const name of stations) visits.set(name, (visits.get(name) ?? 0) + 1);
    for (const [line, stations] of left) {
      const crossings = stations.filter((name) => visits.get(name)! > 1);
      if (crossings.length < 2) left.delete(line);
      else left.set(line, crossings);
    }
    size = sizeOf(left);
  }
  return left;
}

function sizeOf(lines: ReadonlyMap<ClosureLine, readonly string[]>): number {
  let size = 0;
  for (const stations of lines.values()) size += stations.length;
  return size;
}

/** How many ways there are to fail to close: meetings less what heights, offsets and zeros can take up. */
function checks(lines: ReadonlyMap<ClosureLine, readonly string[]>, zero: 'shared' | 'free'): number {
  const crossings = new Set([...lines.values()].flat());
  const meetings = sizeOf(lines);
  const taken = crossings.size + lines.size;
  // The common zero takes up one, and one constant moves nothing; with a zero for each line, a whole plane moves nothing.
  return zero === 'shared' ? meetings - taken : meetings - taken - lines.size + 3;
}

/** The heights that a line brings to its crossings, over the joint ones, µm. */
function laidOn(
  line: ClosureLine,
  crossings: readonly string[],
  zero: 'shared' | 'free',
): [string, number][] {
  const on = new Set(crossings);
  const sums: { name: string; along: number; sumUm: number }[] = [];
  let sumUm = 0;
  line.stations.forEach((name, k) => {
    if (k > 0) sumUm += line.excessUm[k - 1]!;
    if (on.has(name)) sums.push({ name, along: k, sumUm });
  });
  const mean = (of: (at: (typeof sums)[number]) => number) =>
    sums.reduce((total, at) => total + of(at), 0) / sums.length;
  const [middle, level] = [mean(({ along }) => along), mean((at) => at.sumUm)];
  const squares = mean(({ along }) => (along - middle) ** 2);
  const tilt = zero === 'free' && squares > 0 ? mean((at) => (at.along - middle) * at.sumUm) / squares : 0;
  return sums.map((at) => [at.name, at.sumUm - level - tilt * (at.along - middle)]);
}
