import type { Departures } from './reference.ts';

/** What a line is called by its shape. */
export type LineShape = 'straight' | 'crown' | 'hollow' | 's-shaped' | 'wavy';

/** The word and the numbers that justify it: the most that the metal stands above and below its end line, µm. */
export interface ShapeOfLine {
  readonly word: LineShape;
  readonly aboveUm: number;
  readonly belowUm: number;
}

/** A side is ignored when it is less than this part of the other. */
const ONE_SIDED = 0.2;
/** µm; keeps the rounding of exact input, whose uncertainty is nothing, from having a shape. */
const ROUNDING_UM = 1e-9;
/** Coverage of what still counts as nothing: about 95 %. */
const COVERAGE = 2;

/**
 * The shape of a line, seen from the line through its ends (`fromEnds`, in the order of `alongMm`).
 *
 * 1. A station counts as off the line when its departure exceeds twice its standard uncertainty.
 *    None does: *straight*.
 * 2. The stations off the line stand above it, and what stands below is less than a fifth of that:
 *    *crown*. The other way round: *hollow*.
 * 3. Both sides count. Walking along, the side changes once: *s-shaped*; more often: *wavy*.
 *
 * In 3 a departure under a fifth of the largest is no side of its own.
 */
export function shapeOfLine(alongMm: ArrayLike<number>, fromEnds: Departures): ShapeOfLine {
  const { heightUm, uUm } = fromEnds;
  const order = Array.from(alongMm, (_, i) => i).sort((a, b) => alongMm[a]! - alongMm[b]!);
  const off = order.map((i) =>
    Math.abs(heightUm[i]!) > COVERAGE * uUm[i]! + ROUNDING_UM ? heightUm[i]! : 0,
  );
  const aboveUm = off.reduce((most, d) => Math.max(most, d), 0);
  const belowUm = off.reduce((most, d) => Math.max(most, -d), 0);
  return { word: wordFor(off, aboveUm, belowUm), aboveUm, belowUm };
}

function wordFor(off: readonly number[], aboveUm: number, belowUm: number): LineShape {
  if (aboveUm === 0 && belowUm === 0) return 'straight';
  if (belowUm < ONE_SIDED * aboveUm) return 'crown';
  if (aboveUm < ONE_SIDED * belowUm) return 'hollow';
  const least = ONE_SIDED * Math.max(aboveUm, belowUm);
  const sides = off.filter((d) => Math.abs(d) >= least).map(Math.sign);
  const changes = sides.filter((side, i) => i > 0 && side !== sides[i - 1]).length;
  return changes <= 1 ? 's-shaped' : 'wavy';
}
