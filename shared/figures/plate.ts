import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { gradeMet, plateGrades } from '../limits.ts';
import { amountSureTo } from '../words.ts';
import type { Area } from './area.ts';
import type { Figure, Figures } from './figure.ts';
import { planeReference } from './plane-reference.ts';
import { plateShapeSentence, shapeOfPlate } from './plate-shape.ts';
import { departuresFrom, type Reference, rangeFrom } from './reference.ts';

/**
 * Figures of a plate: `flatness.leastSquares` and `flatness.minimumZone`, greatest minus least departure
 * from that plane, µm. The notes say the shape and the grade by GGG-P-463c / ASME B89.3.7, taken on the
 * diagonal of the area that the stations cover.
 */
export function plateFigures(adjusted: AdjustedHeights, area: Area): Figures {
  const flatness = (reference: Reference): Figure => {
    const { valueUm, uUm } = rangeFrom(adjusted, reference);
    return { value: valueUm, unit: 'um', u: uUm };
  };
  const leastSquares = planeReference('leastSquares', area);
  const zone = flatness(planeReference('minimumZone', area));
  const departures = departuresFrom(adjusted, leastSquares);
  const notes =
    area.extent === 'plane'
      ? [
          plateShapeSentence(shapeOfPlate(adjusted, area, departures)),
          gradeNote(zone, diagonalMm(adjusted, area)),
        ]
      : ['The stations lie on one line in plan, so this is a line and no plate, and has no grade.'];
  return {
    figures: { 'flatness.leastSquares': flatness(leastSquares), 'flatness.minimumZone': zone },
    notes,
  };
}

/** Diagonal of the rectangle along the axes that the stations cover, mm. */
function diagonalMm(adjusted: AdjustedHeights, area: Area): number {
  const span = (places: Float64Array) => {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const station of area.stations) {
      low = Math.min(low, places[station]!);
      high = Math.max(high, places[station]!);
    }
    return high - low;
  };
  return Math.hypot(span(adjusted.xMm), span(adjusted.yMm));
}

function gradeNote({ value, u }: Figure, diagonal: number): string {
  const grades = plateGrades(diagonal);
  const met = gradeMet(grades, value, 2 * u);
  const by = `by GGG-P-463c / ASME B89.3.7, on the ${Math.round(diagonal)} mm diagonal of the stations`;
  const flatness = `minimum zone ${amountSureTo(value, u)}`;
  return met === undefined
    ? `Grade: none for certain (${flatness}; B allows ${grades[2]!.limitUm.toFixed(1)} µm) ${by}.`
    : `Grade: ${met.grade} (${flatness}; it allows ${met.limitUm.toFixed(1)} µm) ${by}.`;
}
