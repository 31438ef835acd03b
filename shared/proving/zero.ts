import { noiseOf } from './noise.ts';
import { type Proving, takesOf } from './proving.ts';
import { quantityWords, sureWords } from './quantity-words.ts';
import { coverage, type Verdict } from './verdict.ts';

/** What a level reads on level ground, as it reads, and how sure that is (one standard deviation). */
export interface Zero {
  readonly value: number;
  readonly u: number;
}

/**
 * The zero of a level from two readings on one place, turned end for end between them: the slope of the place
 * changes its sign and drops out of their mean. Null until both were read.
 */
export function zeroOf(proving: Proving): Zero | null {
  const takes = takesOf(proving, 'zero');
  if (!takes) return null;
  return { value: (takes[0]!.value + takes[1]!.value) / 2, u: noiseOf(proving) / Math.SQRT2 };
}

export function zeroVerdict(proving: Proving): Verdict | null {
  const zero = zeroOf(proving);
  if (!zero) return null;
  return {
    step: 'zero',
    is: 'good',
    sentence: `On level ground it reads ${quantityWords(proving, zero.value, zero.u)}, ${sureWords(proving, coverage * zero.u)}.`,
  };
}
