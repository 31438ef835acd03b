/** A number as people type it, with a point or a comma; null when it is none. */
export function readNumber(text: string): number | null {
  const tidy = text.trim().replace('−', '-').replace(',', '.');
  return /^[+-]?(\d+\.?\d*|\.\d+)$/.test(tidy) ? Number(tidy) : null;
}
