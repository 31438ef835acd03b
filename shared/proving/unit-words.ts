import type { ReadingUnit } from '../session/setup.ts';

const words: Record<ReadingUnit, string> = {
  'um/m': 'µm/m',
  'mm/m': 'mm/m',
  arcsec: 'arc seconds',
  deg: 'degrees',
  mrad: 'mrad',
  'in/ft': 'inch per foot',
  'in/10in': 'inch per 10 inch',
  um: 'µm',
  mm: 'mm',
  in: 'inch',
  uin: 'µin',
};

/** What a unit is called in a sentence. */
export function unitWords(unit: ReadingUnit): string {
  return words[unit];
}
