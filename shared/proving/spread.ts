import { noiseOf } from './noise.ts';
import { type Proving, takesOf } from './proving.ts';
import { quantityWords, sureWords } from './quantity-words.ts';
import { coverage, type Verdict } from './verdict.ts';

/**
 * Standard deviation of one reading that is lifted and set down again, as the instrument reads, and how sure that is:
 * a deviation of n readings has itself the relative standard deviation 1/√(2(n − 1)). Null until all were read.
 */
export function sigmaOf(proving: Proving): { readonly value: number; readonly u: number } | null {
  const takes = takesOf(proving, 'spread');
  if (!takes) return null;
  const value = noiseOf(proving);
  return { value, u: value / Math.sqrt(2 * (takes.length - 1)) };
}

/** A spread as it is shown: it is itself never surer than its second digit. */
export function twoDigits(sigma: number): number {
  return Number(sigma.toPrecision(2));
}

/** A spread above this share of the known step says that something is loose or dirty. */
const loose = 0.2;

export function spreadVerdict(proving: Proving): Verdict | null {
  const sigma = sigmaOf(proving);
  const steps = takesOf(proving, 'scale');
  if (!sigma) return null;
  const words = quantityWords(proving, sigma.value, sigma.value);
  const step = steps && Math.abs(steps[1]!.value - steps[0]!.value);
  if (step !== null && sigma.value > loose * step) {
    return {
      step: 'spread',
      is: 'refused',
      sentence: `Set down five times it spreads by ${words}, which is no reading any more.`,
      remedy: 'Wipe its feet and the place, see that nothing is loose, and set it down again.',
    };
  }
  return {
    step: 'spread',
    is: 'good',
    sentence: `Set down five times it spreads by ${words}, itself ${sureWords(proving, coverage * sigma.u)}.`,
  };
}
