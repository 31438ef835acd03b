import type { StationDifference } from '../job/before-after.ts';
import { niceStep } from './svg.ts';

/** Heights, µm, on paper: one scale for everything that is to be compared. */
export interface HeightScale {
  readonly ticks: readonly number[];
  readonly y: (heightUm: number) => number;
  readonly heightOf: (um: number) => number;
}

const COVERAGE = 2;

/** A scale that holds both surveys with their doubt, between `top` and `bottom` of the drawing. */
export function heightScale(
  stations: readonly StationDifference[],
  top: number,
  bottom: number,
): HeightScale {
  const reach = stations.flatMap(({ before, after }) =>
    [before, after].flatMap(({ value, u }) => [value - COVERAGE * u, value + COVERAGE * u]),
  );
  const [low, high] = [Math.min(0, ...reach), Math.max(0, ...reach)];
  const step = niceStep(Math.max(high - low, 1), 7);
  const [first, last] = [
    Math.floor(low / step),
    Math.max(Math.ceil(high / step), Math.floor(low / step) + 1),
  ];
  const ticks = Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step);
  const perUm = (bottom - top) / ((last - first) * step);
  return {
    ticks,
    y: (heightUm) => top + (last * step - heightUm) * perUm,
    heightOf: (um) => um * perUm,
  };
}

/** "10 high", "0", "5 low": an axis never bears a bare sign. */
export function heightWord(um: number): string {
  const size = String(Number(Math.abs(um).toPrecision(6)));
  return um === 0 ? '0' : `${size} ${um > 0 ? 'high' : 'low'}`;
}
