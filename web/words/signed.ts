import { asWritten, number } from './quantity.ts';

/** A height in µm with its expanded uncertainty, in the unit that the head of its column names; one that is nought by definition has none. */
export function heightText({ heightUm, uUm }: { heightUm: number; uUm: number }, decimals: number): string {
  const height = signedSize(heightUm, decimals);
  const expanded = Math.max((2 * uUm) / asWritten().one(), 10 ** -decimals);
  return uUm > 0 ? `${height} ± ${number(expanded, decimals)}` : height;
}

/** A number with its sign, for the worksheet alone. */
export function signed(value: number, decimals: number): string {
  const size = number(Math.abs(value), decimals);
  if (Number(value.toFixed(decimals)) === 0) return size;
  return `${value < 0 ? '−' : '+'}${size}`;
}

/** A height in µm or a slope in µm/m with its sign, in the unit that the head of its column names. */
export function signedSize(value: number, decimals: number, unit: 'µm' | 'µm/m' = 'µm'): string {
  return signed(value / asWritten().one(unit), decimals);
}
