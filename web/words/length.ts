import { shortNumber } from './quantity.ts';

/** A length with its unit: "600 mm", "24″". */
export function spanText(mm: number, unit: 'mm' | 'in'): string {
  return `${lengthText(mm, unit)}${unit === 'mm' ? ' mm' : ''}`;
}

/** A length as the person reads it: "1,800" in mm, "70.866″" in inches; without needless zeros. */
export function lengthText(mm: number, unit: 'mm' | 'in'): string {
  return unit === 'in' ? `${shortNumber(mm / 25.4, 3)}″` : shortNumber(mm, 2);
}
