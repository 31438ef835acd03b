import { WayscribeError } from '../errors.ts';
import type { Dissection } from './dissection.ts';
import { type Observations, rowWidth } from './observations.ts';

/**
 * The pattern of the factorisation. Every node of the dissection is a *front*: a small dense symmetric
 * matrix over the unknowns that the node eliminates (its pivots) and the later ones that these are coupled
 * to (its border). Unknowns are numbered by their place in the order of elimination here.
 */
export interface Fronts {
  readonly count: number;
  /** The pivots of front f are start[f] … start[f + 1] - 1. */
  readonly start: Int32Array;
  readonly parent: Int32Array;
  /** The lowest-numbered front of the subtree under each front: its fronts are firstBelow[f] … f. */
  readonly firstBelow: Int32Array;
  /** The border of front f is border[borderStart[f]] … , ascending. */
  readonly borderStart: Int32Array;
  readonly border: Int32Array;
  /** For each border entry, its index in the parent's front. */
  readonly borderInParent: Int32Array;
  /** The rows of observations in the front of their first pivot: row[rowStart[f]] … */
  readonly rowStart: Int32Array;
  readonly row: Int32Array;
  /** The observations' unknowns as places in the order of elimination (-1 fills up). */
  readonly place: Int32Array;
  /** Place of each unknown in the order of elimination. */
  readonly placeOf: Int32Array;
  /** Where each front's pivot rows begin in the store of the factor, in numbers. */
  readonly storeStart: Float64Array;
  /** The size of the largest front. */
  readonly largest: number;
}

/** A factor of more numbers, or a factorisation of more multiplications, is refused. */
const maxStored = 8e7;
const maxWork = 3e10;

/** @throws WayscribeError `sheet.tooLarge` when the readings are so entangled that solving would not end. */
export function frontsOf(observations: Observations, { order, start, parent }: Dissection): Fronts {
  const { count: rows, unknown } = observations;
  const count = parent.length;
  const placeOf = new Int32Array(order.length);
  order.forEach((k, place) => {
    placeOf[k] = place;
  });
  const frontOf = new Int32Array(order.length);
  for (let f = 0; f < count; f++) frontOf.fill(f, start[f]!, start[f + 1]!);

  const place = unknown.map((k) => (k < 0 ? -1 : placeOf[k]!));
  const rowFront = new Int32Array(rows);
  const rowStart = new Int32Array(count + 1);
  for (let r = 0; r < rows; r++) {
    let first = order.length;
    for (let i = rowWidth * r; i < rowWidth * (r + 1); i++) {
      if (place[i]! >= 0 && place[i]! < first) first = place[i]!;
    }
    rowFront[r] = frontOf[first]!;
    rowStart[frontOf[first]! + 1]!++;
  }
  for (let f = 0; f < count; f++) rowStart[f + 1]! += rowStart[f]!;
  const row = new Int32Array(rows);
  const next = rowStart.slice();
  for (let r = 0; r < rows; r++) row[next[rowFront[r]!]!++] = r;

  const firstBelow = Int32Array.from(parent, (_, f) => f);
  for (let f = 0; f < count; f++) {
    const up = parent[f]!;
    if (up >= 0) firstBelow[up] = Math.min(firstBelow[up]!, firstBelow[f]!);
  }

  const borders: Int32Array[] = [];
  const seen = new Int32Array(order.length).fill(-1);
  const borderStart = new Int32Array(count + 1);
  const storeStart = new Float64Array(count + 1);
  let largest = 0;
  let work = 0;
  for (let f = 0; f < count; f++) {
    const found: number[] = [];
    const add = (p: number) => {
      if (p < start[f + 1]! || seen[p] === f) return;
      seen[p] = f;
      found.push(p);
    };
    for (let i = rowStart[f]!; i < rowStart[f + 1]!; i++) {
      for (let j = rowWidth * row[i]!; j < rowWidth * (row[i]! + 1); j++) add(place[j]!);
    }
    for (let child = f - 1; child >= firstBelow[f]!; child = firstBelow[child]! - 1) {
      borders[child]!.forEach(add);
    }
    borders.push(Int32Array.from(found).sort());
    const pivots = start[f + 1]! - start[f]!;
    const size = pivots + found.length;
    borderStart[f + 1] = borderStart[f]! + found.length;
    storeStart[f + 1] = storeStart[f]! + pivots * size;
    largest = Math.max(largest, size);
    work += pivots * size * size;
    if (storeStart[f + 1]! > maxStored || work > maxWork || largest * largest > maxStored) {
      throw new WayscribeError(
        'sheet.tooLarge',
        '',
        'the readings tie too many far-apart stations together to be solved here',
        'split the survey into parts',
      );
    }
  }

  const border = new Int32Array(borderStart[count]!);
  const borderInParent = new Int32Array(border.length);
  borders.forEach((list, f) => {
    border.set(list, borderStart[f]!);
  });
  for (let f = 0; f < count; f++) {
    const up = parent[f]!;
    if (up < 0) continue;
    const pivots = start[up + 1]! - start[up]!;
    const upBorder = borders[up]!;
    let at = 0;
    for (let i = borderStart[f]!; i < borderStart[f + 1]!; i++) {
      const p = border[i]!;
      if (p < start[up + 1]!) borderInParent[i] = p - start[up]!;
      else {
        while (upBorder[at]! < p) at++;
        borderInParent[i] = pivots + at;
      }
    }
  }
  return {
    count,
    start,
    parent,
    firstBelow,
    borderStart,
    border,
    borderInParent,
    rowStart,
    row,
    place,
    placeOf,
    storeStart,
    largest,
  };
}
