import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { amount } from '../words.ts';
import type { Area } from './area.ts';
import type { Departures } from './reference.ts';
import { fitColumns } from './small-fit.ts';

/** What a plate is called by its shape. */
export type PlateShape =
  | 'flat'
  | 'dome'
  | 'dish'
  | 'wind'
  | 'ridge'
  | 'trough'
  | 'saddle'
  | 'edge droop'
  | 'raised edge'
  | 'uneven';

/**
 * The word and the numbers that justify it. `bendAlongUm` and `bendAcrossUm`: how far the middle stands
 * above the edges in that direction, `windUm`: how far two opposite corners stand above the other two,
 * `edgeUm`: how far the border stands above the inside; all by least squares, µm, plus = HIGH. Shares of
 * the squared departures that the bends and the wind, and the edge alone, explain: 0 to 1.
 */
export interface ShapeOfPlate {
  readonly word: PlateShape;
  readonly bendAlongUm: number;
  readonly bendAcrossUm: number;
  readonly windUm: number;
  readonly edgeUm: number;
  readonly bentShare: number;
  readonly edgeShare: number;
}

const COVERAGE = 2;
const ROUNDING_UM = 1e-9;
/** A simple shape is named when it explains at least this part of the squared departures. */
const EXPLAINS = 0.5;
/** A second direction counts when it bends at least this part of the first. */
const COUNTS = 0.4;
/** Of the extent: nearer to the border than this is on it. */
const ON_BORDER = 1e-6;

/**
 * The shape of a plate from its departures from the least-squares plane (in the order of the area).
 *
 * 1. No departure exceeds twice its standard uncertainty: *flat*.
 * 2. Two simple shapes are fitted: bends along x and y with a wind between the corners, and a border that
 *    stands off the inside. The one that explains more of the squared departures, at least half, gives the
 *    name, else the plate is *uneven*.
 * 3. A border below the inside is *edge droop*, above it *raised edge*.
 * 4. Of the bends and the wind the largest leads. Wind: *wind*. A bend with little of the other one: *ridge* or
 *    *trough*; both of one sense: *dome* or *dish*; of opposite sense: *saddle*.
 */
export function shapeOfPlate(adjusted: AdjustedHeights, area: Area, fromPlane: Departures): ShapeOfPlate {
  const { heightUm, uUm } = fromPlane;
  const x = unit(Float64Array.from(area.stations, (k) => adjusted.xMm[k]!));
  const y = unit(Float64Array.from(area.stations, (k) => adjusted.yMm[k]!));
  const one = x.map(() => 1);
  const border = x.map((value, k) => (Math.max(Math.abs(value), Math.abs(y[k]!)) > 1 - ON_BORDER ? 1 : 0));
  const bent = fitColumns(heightUm, [one, x, y, square(x), square(y), x.map((value, k) => value * y[k]!)]);
  const edged = fitColumns(heightUm, [one, x, y, border]);
  const shape = {
    bendAlongUm: -bent.factors[3]!,
    bendAcrossUm: -bent.factors[4]!,
    windUm: 2 * bent.factors[5]!,
    edgeUm: edged.factors[3]!,
    bentShare: bent.share,
    edgeShare: edged.share,
  };
  const flat = heightUm.every((height, k) => Math.abs(height) <= COVERAGE * uUm[k]! + ROUNDING_UM);
  return { word: flat ? 'flat' : wordFor(shape), ...shape };
}

function wordFor(shape: Omit<ShapeOfPlate, 'word'>): PlateShape {
  const { bendAlongUm, bendAcrossUm, windUm, edgeUm, bentShare, edgeShare } = shape;
  if (Math.max(bentShare, edgeShare) < EXPLAINS) return 'uneven';
  if (edgeShare > bentShare) return edgeUm < 0 ? 'edge droop' : 'raised edge';
  const along = Math.abs(bendAlongUm);
  const across = Math.abs(bendAcrossUm);
  if (Math.abs(windUm) >= Math.max(along, across)) return 'wind';
  const up = (along > across ? bendAlongUm : bendAcrossUm) > 0;
  if (Math.min(along, across) < COUNTS * Math.max(along, across)) return up ? 'ridge' : 'trough';
  if (bendAlongUm > 0 !== bendAcrossUm > 0) return 'saddle';
  return up ? 'dome' : 'dish';
}

/** The shape in one sentence, with the numbers that justify it. */
export function plateShapeSentence(shape: ShapeOfPlate): string {
  const { word, bendAlongUm, bendAcrossUm, windUm, edgeUm } = shape;
  const um = (value: number) => `${amount(value, 0)} µm`;
  const highOrLow = (value: number) => (value > 0 ? 'HIGH' : 'LOW');
  if (word === 'flat')
    return 'Shape: flat, nothing stands out of the plane by more than its own uncertainty.';
  if (word === 'uneven') return 'Shape: uneven, no simple shape explains half of it.';
  if (word === 'edge droop' || word === 'raised edge') {
    return `Shape: ${word}, the border stands ${um(edgeUm)} ${highOrLow(edgeUm)} of the inside.`;
  }
  return `Shape: ${word}; the middle stands ${um(bendAlongUm)} ${highOrLow(bendAlongUm)} along and ${um(bendAcrossUm)} ${highOrLow(bendAcrossUm)} across, the corners wind by ${um(windUm)}.`;
}

/** To −1 … 1 over the extent. */
function unit(places: Float64Array): Float64Array {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const place of places) {
    low = Math.min(low, place);
    high = Math.max(high, place);
  }
  const middle = (low + high) / 2;
  const half = (high - low) / 2 || 1;
  return places.map((place) => (place - middle) / half);
}

function square(values: Float64Array): Float64Array {
  return values.map((value) => value * value);
}
