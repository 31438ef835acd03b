/** A height with its expanded uncertainty, µm; one that is nought by definition has none. */
export function heightText({ heightUm, uUm }: { heightUm: number; uUm: number }, decimals: number): string {
  const height = signed(heightUm, decimals);
  return uUm > 0 ? `${height} ± ${Math.max(2 * uUm, 10 ** -decimals).toFixed(decimals)}` : height;
}

/** A number with its sign, for the worksheet alone. */
export function signed(value: number, decimals: number): string {
  const size = Math.abs(value).toFixed(decimals);
  if (Number(size) === 0) return size;
  return `${value < 0 ? '−' : '+'}${size}`;
}
