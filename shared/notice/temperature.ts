import type { Session } from '../session/fold.ts';
import type { Circumstances, Notice } from './notice.ts';
import { lengthWords } from './reading.ts';

/** Thermal expansion of cast iron, per °C (10 to 12 µm/m in engineering handbooks; from memory, unchecked). */
const ironPerC = 11e-6;
/** Where nobody has said how deep the part is. */
const usualDepthShare = 0.1;
const leastUm = 1;
/** Air and part are never quite alike; less than this says nothing of the heat in the iron, °C. */
const leastToAirC = 1;

/**
 * How far a part bows when its top is warmer than its bottom by `differenceC`, µm: α·ΔT·L²/(8·h), proud in the middle. A
 * part of 900 mm, 100 mm deep, bows by 11 µm for 1 °C.
 */
export function thermalBowUm(part: { lengthMm: number; depthMm: number }, differenceC: number): number {
  return (1000 * ironPerC * differenceC * part.lengthMm ** 2) / (8 * part.depthMm);
}

/**
 * The bow that the temperatures known could make. It is shown and never taken off: nobody knows how the heat lies in the
 * iron.
 */
export function temperature({ setup }: Session, circumstances: Circumstances): Notice[] {
  const { depthMm, topC, bottomC } = { ...setup, ...circumstances };
  const lengthMm = 'travelMm' in setup ? setup.travelMm : setup.lengthMm;
  const part = { lengthMm, depthMm: depthMm ?? usualDepthShare * lengthMm };
  const measured = topC !== undefined && bottomC !== undefined;
  const { partC, airC } = setup;
  if (!measured && (partC === undefined || airC === undefined)) return [];
  const differenceC = measured ? topC - bottomC : airC! - partC!;
  if (!measured && Math.abs(differenceC) < leastToAirC) return [];
  const bowUm = Math.abs(thermalBowUm(part, differenceC));
  if (bowUm < Math.max(leastUm, (setup.limit ?? 0) / 3)) return [];
  const degrees = `${Math.abs(differenceC).toFixed(1)} °C`;
  const size = `${lengthWords(lengthMm, setup)} long and ${lengthWords(part.depthMm, setup)} deep${depthMm === undefined ? ' (taken as a tenth of its length)' : ''}`;
  const bow = `${bowUm.toFixed(bowUm < 10 ? 1 : 0)} µm`;
  const way = differenceC > 0 ? 'proud' : 'hollow';
  const text = measured
    ? `The top is ${degrees} ${differenceC > 0 ? 'warmer' : 'colder'} than the bottom: ${size}, that bows iron ${bow} ${way}. Nothing is taken off for it; let it come to rest and repeat.`
    : `The air is ${degrees} ${differenceC > 0 ? 'warmer' : 'colder'} than the part. If that stands between its top and its bottom, ${size}, it bows up to ${bow}. Nothing is taken off for it; let it come to rest.`;
  return [{ code: 'temperature', text, warns: measured }];
}
