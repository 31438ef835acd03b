import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Combination, combine, evaluate, single, standardUncertainty } from './combination.ts';
import type { Line } from './line.ts';
import { travelMm } from './line.ts';
import { leastSquaresSlope } from './line-reference.ts';
import { extremesOf } from './reference.ts';

export type FigureUnit = 'um' | 'um/m' | 'um/m per m';

/** One number that a survey comes to; `u` is one standard deviation in the same unit. */
export interface Figure {
  readonly value: number;
  readonly unit: FigureUnit;
  readonly u: number;
}

/** The figures of a survey by name, and what has to be said with them. */
export interface Figures {
  readonly figures: Readonly<Record<string, Figure>>;
  readonly notes: readonly string[];
}

/** The lines of a survey by name, in the order of the sheet. */
export type Lines = Readonly<Record<string, Line>>;

/** A linear combination of heights as a figure; its weights carry the unit. */
export function figureOf(adjusted: AdjustedHeights, combination: Combination, unit: FigureUnit): Figure {
  return {
    value: evaluate(combination, adjusted.heightUm),
    unit,
    u: standardUncertainty(adjusted, combination),
  };
}

/** The greatest minus the least of several combinations, through the two that define it. */
export function spreadOf(
  adjusted: AdjustedHeights,
  combinations: readonly Combination[],
  unit: FigureUnit,
): Figure {
  const values = combinations.map((combination) => evaluate(combination, adjusted.heightUm));
  const { highest, lowest } = extremesOf(values);
  const difference = combine([1, combinations[highest]!], [-1, combinations[lowest]!]);
  return {
    value: values[highest]! - values[lowest]!,
    unit,
    u: highest === lowest ? 0 : standardUncertainty(adjusted, difference),
  };
}

/** Greatest minus least height over the travel, µm: what a slide's parallelism is. Not freed from a tilt. */
export function parallelismOf(adjusted: AdjustedHeights, line: Line): Figure {
  return spreadOf(adjusted, Array.from(line.stations, single), 'um');
}

/** Least-squares slope × travel, µm; plus when the line rises from its first station to its last. */
export function taperOf(adjusted: AdjustedHeights, line: Line): Figure {
  return figureOf(adjusted, combine([travelMm(line), leastSquaresSlope(line)]), 'um');
}

/** Least-squares slope, µm/m; plus when the line rises from its first station to its last. */
export function slopeOf(adjusted: AdjustedHeights, line: Line): Figure {
  return figureOf(adjusted, combine([1000, leastSquaresSlope(line)]), 'um/m');
}
