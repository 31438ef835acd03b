import { WayscribeError } from '../errors.ts';
import { type Observations, rowWidth } from './observations.ts';

/**
 * Which stations readings tie together, as the number of its part for each station (0, 1, …).
 * A tilt ties its two feet; a sweep ties all stations that it touches, and sweeps of known offset tie
 * theirs to one common height.
 */
export function partsOf(observations: Observations): Int32Array {
  const { stationNames, nuisances, count, unknown } = observations;
  const n = stationNames.length;
  const ground = n + nuisances.length;
  const parent = Int32Array.from({ length: ground + 1 }, (_, k) => k);
  const find = (k: number): number => {
    let root = k;
    while (parent[root] !== root) root = parent[root]!;
    for (let at = k; at !== root; ) {
      const next = parent[at]!;
      parent[at] = root;
      at = next;
    }
    return root;
  };
  const join = (a: number, b: number) => {
    parent[find(a)] = find(b);
  };
  for (let row = 0; row < count; row++) {
    const a = unknown[rowWidth * row]!;
    const b = unknown[rowWidth * row + 1]!;
    const offset = unknown[rowWidth * row + 2]!;
    if (b >= 0 && b < n) join(a, b);
    else join(a, offset >= 0 ? offset : ground);
  }
  const number = new Map<number, number>();
  return Int32Array.from({ length: n }, (_, k) => {
    const root = find(k);
    if (!number.has(root)) number.set(root, number.size);
    return number.get(root)!;
  });
}

/**
 * Proves that the stations hang together as their kind needs it: all of them, or (`byLine`) those of each
 * line and whatever hangs on a line, with every station touched by a reading.
 * @throws WayscribeError `adjust.notTied`, naming the stations that are not tied to the rest.
 */
export function checkTied(
  observations: Observations,
  parts: Int32Array,
  lines: Readonly<Record<string, readonly string[]>>,
  byLine: boolean,
): void {
  const { stationNames, count, unknown } = observations;
  const touched = new Uint8Array(stationNames.length);
  for (let row = 0; row < count; row++) {
    touched[unknown[rowWidth * row]!] = 1;
    const b = unknown[rowWidth * row + 1]!;
    if (b >= 0 && b < stationNames.length) touched[b] = 1;
  }
  const loose = stationNames.filter((_, k) => !touched[k]);
  if (loose.length > 0) throw notTied(loose);

  const indexOf = new Map(stationNames.map((name, k) => [name, k]));
  const partOf = (name: string) => parts[indexOf.get(name)!]!;
  const named = Object.values(lines);
  for (const names of byLine ? named : [stationNames]) {
    const largest = largestPart(names.map(partOf));
    const others = names.filter((name) => partOf(name) !== largest);
    if (others.length > 0) throw notTied(others);
  }
  if (!byLine) return;
  const withLine = new Set(named.flat().map(partOf));
  const others = stationNames.filter((name) => !withLine.has(partOf(name)));
  if (others.length > 0) throw notTied(others);
}

function largestPart(parts: readonly number[]): number {
  const sizes = new Map<number, number>();
  for (const part of parts) sizes.set(part, (sizes.get(part) ?? 0) + 1);
  return [...sizes].reduce((best, entry) => (entry[1] > best[1] ? entry : best))[0];
}

function notTied(names: readonly string[]): WayscribeError {
  const list = names.slice(0, 8).join(', ') + (names.length > 8 ? ` and ${names.length - 8} more` : '');
  return new WayscribeError(
    'adjust.notTied',
    `stations ${list}`,
    'no reading ties this to the other stations',
    'add a reading that does, or take it out of the sheet',
  );
}
