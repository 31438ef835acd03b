import { noiseOf } from './noise.ts';
import { type Proving, takesOf } from './proving.ts';
import type { Verdict } from './verdict.ts';

/** A movement counts when it is this many times as large as what noise makes of two readings. */
const clear = 6;

/**
 * +1 when plus means that the far foot, or the metal under the tip, stands HIGH; −1 when it means LOW; null until
 * that was tried, or when it hardly moved.
 */
export function signOf(proving: Proving): 1 | -1 | null {
  const takes = takesOf(proving, 'sign');
  if (!takes) return null;
  const moved = takes[1]!.value - takes[0]!.value;
  if (Math.abs(moved) <= clear * Math.SQRT2 * noiseOf(proving)) return null;
  return moved > 0 ? 1 : -1;
}

/** "plus means far foot (cable end) HIGH", "plus means HIGH". */
export function signWords({ reads, far }: Pick<Proving, 'reads' | 'far'>, sign: 1 | -1): string {
  return `plus means ${reads === 'tilt' ? `far foot (${far}) ` : ''}${sign > 0 ? 'HIGH' : 'LOW'}`;
}

export function signVerdict(proving: Proving): Verdict | null {
  if (!takesOf(proving, 'sign')) return null;
  const sign = signOf(proving);
  if (sign === null) {
    return {
      step: 'sign',
      is: 'doubtful',
      sentence: 'It hardly moved: which way is plus can’t be told.',
      remedy: 'Move it further, and see that it is this instrument that you move.',
    };
  }
  return {
    step: 'sign',
    is: 'good',
    sentence: `It went ${sign > 0 ? 'up' : 'down'}, far beyond its noise: ${signWords(proving, sign)}.`,
  };
}
