import type { Live } from '../../shared/messages.ts';
import type { ReadingState } from '../../shared/session/events.ts';
import type { TiltUnit } from '../../shared/units.ts';

/** What a tilt unit is called, and how many decimals of it a person can use. */
const unitTable: Record<TiltUnit, { word: string; decimals: number }> = {
  'um/m': { word: 'µm/m', decimals: 1 },
  'mm/m': { word: 'mm/m', decimals: 4 },
  arcsec: { word: 'arc seconds', decimals: 1 },
  deg: { word: 'degrees', decimals: 5 },
  mrad: { word: 'mrad', decimals: 4 },
  'in/ft': { word: 'inch per foot', decimals: 6 },
  'in/10in': { word: 'inch per 10 inch', decimals: 6 },
};

export function unitWord(unit: string): string {
  return unit in unitTable ? unitTable[unit as TiltUnit].word : unit;
}

const stateWords: Record<Exclude<ReadingState, 'ok'>, string> = {
  'over-range': 'beyond its range',
  'low-battery': 'battery low',
  hold: 'held: display is frozen',
  error: 'the level reports a fault',
};

/** The live reading in three pieces: the digits, the unit, and which foot stands higher. */
export interface LiveWords {
  readonly digits: string;
  readonly unit: string;
  readonly words: string;
}

/**
 * The reading in words of metal. `facing` is +1 when a positive reading means that the foot at the far
 * end is higher; the far foot is the one away from the start end, whichever way one walks.
 */
export function liveWords(live: Live | null, unit: string, facing: 1 | -1): LiveWords {
  const word = unitWord(unit);
  if (!live) return { digits: '—', unit: word, words: 'nothing heard yet' };
  if (live.state !== 'ok' && live.state !== 'low-battery') {
    return { digits: '—', unit: word, words: stateWords[live.state] };
  }
  if (live.value === null) return { digits: '—', unit: word, words: 'no number' };
  const digits = sizeText(live.value, unit);
  const high = live.value * facing > 0;
  const words = Number(digits.replaceAll(',', '')) === 0 ? 'feet level' : `far foot ${high ? 'HIGH' : 'LOW'}`;
  const battery = live.state === 'low-battery' ? `, ${stateWords['low-battery']}` : '';
  return { digits, unit: word, words: words + battery };
}

/** The size of a reading, no sign, with the decimals that its unit deserves. */
export function sizeText(value: number, unit: string): string {
  const decimals = unit in unitTable ? unitTable[unit as TiltUnit].decimals : 2;
  return Math.abs(value).toLocaleString('en', {
    minimumFractionDigits: decimals,
    maximumFractionDigits: decimals,
  });
}

/** "1.2 s", "14 s", "3 min": how long something has lasted. */
export function lasting(ms: number): string {
  if (ms < 9_950) return `${(ms / 1000).toFixed(1)} s`;
  if (ms < 119_500) return `${Math.round(ms / 1000)} s`;
  if (ms < 7_170_000) return `${Math.round(ms / 60_000)} min`;
  return `${Math.round(ms / 3_600_000)} h`;
}
