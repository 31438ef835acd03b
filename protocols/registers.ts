/** Numbers as machines hold them, written as hex digits with the most significant first. */

/** The whole number in `digits`, as decimal text; null when a digit of a `bcd` number is none. */
export function integerOf(is: 'int' | 'uint' | 'bcd', digits: string): string | null {
  if (is === 'bcd') return /^\d+$/.test(digits) ? digits : null;
  const size = BigInt(`0x${digits}`);
  const bits = 4n * BigInt(digits.length);
  return String(is === 'int' && size >> (bits - 1n) ? size - (1n << bits) : size);
}

/** The inverse of `integerOf`; null when `width` digits have no room for it. */
export function hexOfInteger(is: 'int' | 'uint' | 'bcd', whole: bigint, width: number): string | null {
  const bits = 4n * BigInt(width);
  const low = is === 'int' ? -(1n << (bits - 1n)) : 0n;
  const end = is === 'int' ? -low : is === 'bcd' ? 10n ** BigInt(width) : 1n << bits;
  if (whole < low || whole >= end) return null;
  const digits = is === 'bcd' ? whole.toString() : (whole < 0n ? whole + (1n << bits) : whole).toString(16);
  return digits.padStart(width, '0');
}

/** IEEE 754 of 8 or 16 hex digits; NaN when it is neither. */
export function floatOf(digits: string): number {
  const view = new DataView(new ArrayBuffer(8));
  if (digits.length === 8) {
    view.setUint32(0, Number.parseInt(digits, 16));
    return view.getFloat32(0);
  }
  if (digits.length !== 16) return Number.NaN;
  view.setBigUint64(0, BigInt(`0x${digits}`));
  return view.getFloat64(0);
}

/** The inverse of `floatOf`, rounded to the nearest; `width` is 8 or 16. */
export function hexOfFloat(value: number, width: number): string {
  const view = new DataView(new ArrayBuffer(8));
  if (width === 8) view.setFloat32(0, value);
  else view.setFloat64(0, value);
  return view.getBigUint64(0).toString(16).padStart(16, '0').slice(0, width);
}
