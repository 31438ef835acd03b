import type { Live } from '../../shared/messages.ts';
import { unitWords } from '../../shared/proving/unit-words.ts';
import type { ReadingState } from '../../shared/session/events.ts';
import { type HeightUnit, type TiltUnit, unitFactor } from '../../shared/units.ts';
import { asWritten, number } from './quantity.ts';
import { say } from './say.ts';

/** How many decimals of a unit a person can use. */
const decimalsOf: Record<TiltUnit | HeightUnit, number> = {
  'um/m': 1,
  'mm/m': 4,
  arcsec: 1,
  deg: 5,
  mrad: 4,
  'in/ft': 6,
  'in/10in': 6,
  um: 1,
  mm: 4,
  in: 6,
  uin: 0,
};

/** What a unit is called; a word that is no unit stays as it is. */
export function unitWord(unit: string): string {
  return isUnit(unit) ? unitWords(unit) : unit;
}

function isUnit(unit: string): unit is TiltUnit | HeightUnit {
  return Object.hasOwn(decimalsOf, unit);
}

const stateWords: Record<Exclude<ReadingState, 'ok'>, string> = {
  'over-range': 'beyond its range',
  'low-battery': 'battery low',
  hold: 'held: display is frozen',
  error: 'it reports a fault',
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
export function liveWords(live: Live | null, unit: string, facing: 1 | -1, farFoot = 'far foot'): LiveWords {
  const value = numberOf(live);
  if (typeof value === 'string') return { digits: '—', unit: unitWord(unit), words: value };
  const digits = sizeText(value, unit);
  const high = value * facing > 0;
  const words = isNothing(digits) ? 'feet level' : `${farFoot} ${high ? 'HIGH' : 'LOW'}`;
  return { digits, unit: unitWord(unit), words: words + batteryWords(live) };
}

/**
 * The reading of an indicator. By itself it says nothing of metal: only the difference from an earlier reading
 * does. `from` is that reading, in the same unit, and where it was taken; `sense` is +1 when plus means high.
 */
export function tipWords(
  live: Live | null,
  unit: string,
  sense: 1 | -1,
  from: { readonly value: number; readonly name: string } | null,
): LiveWords {
  const value = numberOf(live);
  const word = unitWord(unit);
  if (typeof value === 'string') return { digits: '—', unit: word, words: value };
  if (!from) {
    const minus = value < 0 && !isNothing(sizeText(value, unit)) ? 'minus, ' : '';
    return {
      digits: sizeText(value, unit),
      unit: word,
      words: `${minus}${say('as it reads')}${batteryWords(live)}`,
    };
  }
  // A difference is metal: it is told in µm or inches, as the reader has it, however the indicator counts.
  const inMetal = asWritten().lengthUnit === 'in' ? 'in' : unit === 'mm' ? 'um' : unit;
  const off = (sense * (value - from.value) * unitFactor('height', unit)) / unitFactor('height', inMetal);
  const digits = sizeText(off, inMetal);
  const side = isNothing(digits)
    ? `level with ${from.name}`
    : `${off > 0 ? 'HIGHER' : 'LOWER'} than ${from.name}`;
  return { digits, unit: unitWord(inMetal), words: side + batteryWords(live) };
}

/** The number that is shown, or in words why there is none. */
function numberOf(live: Live | null): number | string {
  if (!live) return 'nothing heard yet';
  if (live.state !== 'ok' && live.state !== 'low-battery') return stateWords[live.state];
  return live.value ?? 'no number';
}

function isNothing(digits: string): boolean {
  return !/[1-9]/.test(digits);
}

function batteryWords(live: Live | null): string {
  return live?.state === 'low-battery' ? `, ${stateWords['low-battery']}` : '';
}

/** The size of a reading, no sign, with the decimals that its unit deserves. */
export function sizeText(value: number, unit: string): string {
  return number(Math.abs(value), isUnit(unit) ? decimalsOf[unit] : 2);
}

/** "1.2 s", "14 s", "3 min": how long something has lasted. */
export function lasting(ms: number): string {
  if (ms < 9_950) return `${number(ms / 1000, 1)} s`;
  if (ms < 119_500) return `${Math.round(ms / 1000)} s`;
  if (ms < 7_170_000) return `${Math.round(ms / 60_000)} min`;
  return `${Math.round(ms / 3_600_000)} h`;
}
