import type { ReadingUnit } from '../session/setup.ts';
import type { ProvingStep } from './proving.ts';
import type { Slip } from './slips.ts';

/** What a step has shown. */
export interface Verdict {
  readonly step: ProvingStep;
  /** `doubtful`: it can't be told from these readings. */
  readonly is: 'good' | 'refused' | 'doubtful';
  readonly sentence: string;
  /** What helps, when it is not good. */
  readonly remedy?: string;
  readonly slip?: Slip;
  /** Unit in which the same readings would be right. */
  readonly fits?: ReadingUnit;
}

/** k = 2, about 95 %. */
export const coverage = 2;
