/** How beams sag and bow, and how the horizon curves: what stands between a reading and the metal. */

/**
 * Sag of a uniform beam of length 1 on two symmetrical supports `spread` apart (0 to 1 of the length), in
 * units of w·L⁴/(E·I), w the weight per length: how far the ends and the middle lie below the supports, and
 * the greatest minus the least height of the whole line. From the differential equation of the beam;
 * 5/384 at the middle for supports at the ends.
 */
export function sagOnTwoSupports(spread: number): { ends: number; middle: number; range: number } {
  const s = spread;
  const c = (1 - s) / 2;
  // Between the supports v(t) = t⁴/24 + bend·t²/2 + middle, t from the middle; v = 0 at the supports.
  const bend = (c * c) / 2 - (s * s) / 8;
  const middle = (s * s * (5 * s * s - 24 * c * c)) / 384;
  const slopeAtSupport = s ** 3 / 48 + (bend * s) / 2;
  const overhang = (fromSupport: number) =>
    slopeAtSupport * fromSupport + (c ** 3 * fromSupport) / 6 - (c ** 4 - (c - fromSupport) ** 4) / 24;
  const ends = overhang(c);
  const turns = [0, ends, middle];
  if (bend < 0 && -6 * bend < (s * s) / 4) turns.push(middle - 1.5 * bend * bend);
  const left = c ** 3 + 6 * slopeAtSupport;
  if (left > 0 && left < c ** 3) turns.push(overhang(c - Math.cbrt(left)));
  return { ends, middle, range: Math.max(...turns) - Math.min(...turns) };
}

/** Distances between two supports, of the length: ends stay level (Airy), shortening is least (Bessel), sag is least. */
export const supportSpread = { airy: 1 / Math.sqrt(3), bessel: 0.55938, leastSag: 0.553703 } as const;

/** w·L⁴/(E·I) of a rectangular bar in µm; its width cancels. Density kg/m³, modulus GPa, lengths mm. */
export function sagUnitUm(bar: {
  lengthMm: number;
  heightMm: number;
  densityKgPerM3: number;
  modulusGPa: number;
}): number {
  const gravity = 9.80665;
  const length = bar.lengthMm / 1000;
  const height = bar.heightMm / 1000;
  return ((12 * bar.densityKgPerM3 * gravity * length ** 4) / (bar.modulusGPa * 1e9 * height ** 2)) * 1e6;
}

/**
 * Bow of a body that is warmer on one side, µm: α·ΔT·L²/(8·H), the warm side convex. `expansionPerK` in
 * 1/K, `differenceK` between the sides, length and thickness in mm.
 */
export function thermalBowUm(body: {
  expansionPerK: number;
  differenceK: number;
  lengthMm: number;
  thicknessMm: number;
}): number {
  return (1000 * body.expansionPerK * body.differenceK * body.lengthMm ** 2) / (8 * body.thicknessMm);
}
