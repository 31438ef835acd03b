import { type Observations, rowWidth } from './observations.ts';

/** For each station the stations that share a tilt with it, as lists laid end to end. */
export function neighboursOf({ stationNames, count, unknown }: Observations) {
  const n = stationNames.length;
  const start = new Int32Array(n + 1);
  const isTilt = (row: number) => unknown[rowWidth * row + 1]! >= 0 && unknown[rowWidth * row + 1]! < n;
  for (let row = 0; row < count; row++) {
    if (!isTilt(row)) continue;
    start[unknown[rowWidth * row]! + 1]!++;
    start[unknown[rowWidth * row + 1]! + 1]!++;
  }
  for (let k = 0; k < n; k++) start[k + 1]! += start[k]!;
  const list = new Int32Array(start[n]!);
  const next = start.slice(0, n);
  for (let row = 0; row < count; row++) {
    if (!isTilt(row)) continue;
    const a = unknown[rowWidth * row]!;
    const b = unknown[rowWidth * row + 1]!;
    list[next[a]!++] = b;
    list[next[b]!++] = a;
  }
  return { start, list };
}
