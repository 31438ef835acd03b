import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { type Figures, type Lines, parallelismOf, taperOf } from './figure.ts';

/** Two equal pins pushed into the corners of a dovetail; the angle is that of the flank to the flat. */
export interface Pins {
  readonly diameterMm: number;
  readonly angleDeg: number;
  readonly form: 'male' | 'female';
}

/**
 * What two pins add to the width across the sharp corners where flank meets flat, mm: D·(1 + cot(α/2))
 * over a male dovetail; between the pins of a female one as much less (Machinery's Handbook).
 */
export function pinAllowanceMm({ diameterMm, angleDeg, form }: Pins): number {
  const allowance = diameterMm * (1 + 1 / Math.tan((angleDeg * Math.PI) / 360));
  return form === 'male' ? allowance : -allowance;
}

/** Width across the sharp corners from the size over (male) or between (female) the pins, mm. */
export function widthFromPins(sizeMm: number, pins: Pins): number {
  return sizeMm - pinAllowanceMm(pins);
}

/**
 * Figures of a dovetail, heights being sizes over or between pins in µm: `parallelism`, greatest minus
 * least size along the first line, and `taper`, least-squares slope × travel; µm.
 */
export function dovetailFigures(adjusted: AdjustedHeights, lines: Lines, pins?: Pins): Figures {
  const [line] = Object.values(lines);
  if (line === undefined) return { figures: {}, notes: [] };
  const notes = ['The sizes tell how parallel the two flanks are; they cannot tell which flank is at fault.'];
  if (pins !== undefined) {
    const where = pins.form === 'male' ? 'over' : 'between';
    const allowance = Math.abs(pinAllowanceMm(pins)).toFixed(4);
    notes.push(
      `The width across the sharp corners is the size ${where} the pins ${pins.form === 'male' ? 'less' : 'plus'} ${allowance} mm.`,
    );
  }
  return {
    figures: { parallelism: parallelismOf(adjusted, line), taper: taperOf(adjusted, line) },
    notes,
  };
}
