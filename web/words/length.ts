/** A length with its unit: "600 mm", "24″". */
export function spanText(mm: number, unit: 'mm' | 'in'): string {
  return `${lengthText(mm, unit)}${unit === 'mm' ? ' mm' : ''}`;
}

/** A length as the person reads it: "1,800" in mm, "70.866″" in inches; without needless zeros. */
export function lengthText(mm: number, unit: 'mm' | 'in'): string {
  const value = unit === 'in' ? mm / 25.4 : mm;
  const text = value.toLocaleString('en', { maximumFractionDigits: unit === 'in' ? 3 : 2 });
  return unit === 'in' ? `${text}″` : text;
}
