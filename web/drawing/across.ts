/**
 * The x axis that the part, its dimensions and the profile share, in CSS pixels from the left edge of the
 * drawing. Station 0 is at 0 mm.
 */
export interface Across {
  readonly widthPx: number;
  /** The ends of the part as drawn. */
  readonly leftPx: number;
  readonly rightPx: number;
  readonly pxPerMm: number;
  px(xMm: number): number;
}

/** Metal drawn beyond the first and last station at the least, so that the feet stand on it. */
const leastOverhangPx = 14;

/**
 * The axis for a drawing `widthPx` wide whose stations cover `coveredMm` of a way `lengthMm` long. What is
 * longer than the stations cover is drawn half at each end. `gutterPx` is kept free at the left for the words
 * of the height axis.
 */
export function across(widthPx: number, coveredMm: number, lengthMm: number, gutterPx: number): Across {
  const leftPx = gutterPx;
  const rightPx = Math.max(leftPx + 4 * leastOverhangPx, widthPx - leastOverhangPx);
  const overMm = Math.max(0, (lengthMm - coveredMm) / 2);
  const toScale = (rightPx - leftPx) / (coveredMm + 2 * overMm);
  const enough = overMm * toScale >= leastOverhangPx;
  const pxPerMm = enough ? toScale : (rightPx - leftPx - 2 * leastOverhangPx) / coveredMm;
  const zeroPx = leftPx + (enough ? overMm * toScale : leastOverhangPx);
  return { widthPx, leftPx, rightPx, pxPerMm, px: (xMm) => zeroPx + xMm * pxPerMm };
}
