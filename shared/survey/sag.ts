/**
 * How far a bar held at its near end hangs down at `xMm` from its first station, µm, when it hangs down by `sagUm`
 * at its last: the line of a uniform beam built in at one end, (6t² − 4t³ + t⁴)/3 with t = x/length (strength of
 * materials, in any handbook of engineering).
 */
export function sagUm(bar: { readonly lengthMm: number; readonly sagUm: number }, xMm: number): number {
  const t = xMm / bar.lengthMm;
  return (bar.sagUm * t * t * (6 - 4 * t + t * t)) / 3;
}
