import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { WayscribeError } from '../errors.ts';

/** One line of stations: indices into the adjusted heights, distance along the line in mm, heights in µm. */
export interface Line {
  readonly stations: Int32Array;
  readonly alongMm: Float64Array;
  readonly heightUm: Float64Array;
}

/**
 * A line from station indices in order. Distances run along the straight connection from its first to
 * its last station, from 0. Throws `sheet.invalid` at `place` for fewer than two stations or ends that
 * stand at one place.
 */
export function lineOf(adjusted: AdjustedHeights, stations: ArrayLike<number>, place = 'lines'): Line {
  const first = stations[0];
  const last = stations[stations.length - 1];
  if (first === undefined || last === undefined || stations.length < 2) {
    throw new WayscribeError('sheet.invalid', place, 'a line needs at least two stations', 'add stations');
  }
  const { xMm, yMm } = adjusted;
  const dx = xMm[last]! - xMm[first]!;
  const dy = yMm[last]! - yMm[first]!;
  const length = Math.hypot(dx, dy);
  if (!(length > 0)) {
    throw new WayscribeError(
      'sheet.invalid',
      place,
      'the first and the last station stand at one place',
      'end the line at another station',
    );
  }
  const indices = Int32Array.from(stations);
  return {
    stations: indices,
    alongMm: Float64Array.from(
      indices,
      (k) => ((xMm[k]! - xMm[first]!) * dx + (yMm[k]! - yMm[first]!) * dy) / length,
    ),
    heightUm: Float64Array.from(indices, (k) => adjusted.heightUm[k]!),
  };
}

/** The length of travel that the stations of a line cover, mm. */
export function travelMm(line: Line): number {
  let low = line.alongMm[0]!;
  let high = low;
  for (const x of line.alongMm) {
    low = Math.min(low, x);
    high = Math.max(high, x);
  }
  return high - low;
}
