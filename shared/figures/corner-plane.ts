import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Combination, combine, evaluate, single, standardUncertainty } from './combination.ts';
import type { Reference } from './reference.ts';

/** One way of a bed: indices of its stations in order along x. */
interface Way {
  readonly stations: ArrayLike<number>;
}

/** Two stations across from each other, by index. */
type Pair = readonly [number, number];

/** How a bed lies across at one pair of stations against its first pair; plus: the second line is higher here. */
export interface Lean {
  readonly from: string;
  readonly to: string;
  readonly xMm: number;
  readonly slopeUmPerM: number;
  readonly uUmPerM: number;
}

/**
 * The plane through three corners of a bed: the first and the last station of the first line, and the first station of the
 * second. The first line stands on it over its own ends; the last station of the second shows the wind.
 * Both lines run along x and need at least one station; the first line needs two.
 */
export function cornerPlane({ xMm }: AdjustedHeights, first: Way, second: Way): Reference {
  const start = first.stations[0]!;
  const end = first.stations[first.stations.length - 1]!;
  const hinge = second.stations[0]!;
  const stations = [...Array.from(first.stations), ...Array.from(second.stations)];
  const onSecond = stations.map((_, i) => i >= first.stations.length);
  const travel = xMm[end]! - xMm[start]!;
  return {
    stations,
    basis: [
      Float64Array.from(onSecond, (is) => (is ? 0 : 1)),
      Float64Array.from(onSecond, (is) => (is ? 1 : 0)),
      Float64Array.from(stations, (k, i) => (xMm[k]! - xMm[onSecond[i] ? hinge : start]!) / travel),
    ],
    parameters: [single(start), single(hinge), combine([1, single(end)], [-1, single(start)])],
  };
}

/**
 * The slope across at each pair less that at the first pair, µm/m. A level on a bridge has a zero of its own, so only
 * this difference is known, and not how level the bed lies.
 */
export function leansOf(adjusted: AdjustedHeights, pairs: readonly Pair[]): Lean[] {
  const { names, xMm, heightUm } = adjusted;
  const [first] = pairs;
  if (!first) return [];
  return pairs.map((pair) => {
    const lean = combine([1, slopeAcross(adjusted, pair)], [-1, slopeAcross(adjusted, first)]);
    return {
      from: names[pair[0]]!,
      to: names[pair[1]]!,
      xMm: xMm[pair[0]]!,
      slopeUmPerM: evaluate(lean, heightUm),
      uUmPerM: pair === first ? 0 : standardUncertainty(adjusted, lean),
    };
  });
}

/** How far the second station of a pair stands over the first one, µm, when `against` is taken to lie level across. */
export function riseAcross(adjusted: AdjustedHeights, pair: Pair, against: Pair): Combination {
  const gaugeM = gaugeMm(adjusted, pair) / 1000;
  return combine([gaugeM, slopeAcross(adjusted, pair)], [-gaugeM, slopeAcross(adjusted, against)]);
}

/** µm/m, plus = the second station is higher. */
function slopeAcross(adjusted: AdjustedHeights, pair: Pair): Combination {
  const perMetre = 1000 / gaugeMm(adjusted, pair);
  return combine([perMetre, single(pair[1])], [-perMetre, single(pair[0])]);
}

function gaugeMm({ xMm, yMm }: AdjustedHeights, [from, to]: Pair): number {
  return Math.hypot(xMm[to]! - xMm[from]!, yMm[to]! - yMm[from]!);
}
