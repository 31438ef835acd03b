import { type Pose, type Proving, type ProvingStep, posesIn, stepsOf } from './proving.ts';
import { scaleVerdict } from './scale.ts';
import { signVerdict } from './sign.ts';
import { spreadVerdict } from './spread.ts';
import type { Verdict } from './verdict.ts';
import { zeroVerdict } from './zero.ts';

const verdictOf = {
  sign: signVerdict,
  scale: scaleVerdict,
  zero: zeroVerdict,
  spread: spreadVerdict,
} as const satisfies Record<ProvingStep, (proving: Proving) => Verdict | null>;

/** How far a proving has come. */
export interface Progress {
  /** Of every step that was read whole, up to the first one that is not good. */
  readonly verdicts: readonly Verdict[];
  /** The step that is on; null when all are good. */
  readonly step: ProvingStep | null;
  /** The pose to be read next; null when the step was read and must be done again, or when all are good. */
  readonly pose: Pose | null;
}

/** Where a proving stands: the first step that is not good is the one that is on. */
export function progressOf(proving: Proving): Progress {
  const verdicts: Verdict[] = [];
  for (const step of stepsOf(proving)) {
    const verdict = verdictOf[step](proving);
    if (verdict) verdicts.push(verdict);
    if (verdict?.is !== 'good') return { verdicts, step, pose: verdict ? null : nextPose(proving, step) };
  }
  return { verdicts, step: null, pose: null };
}

function nextPose(proving: Proving, step: ProvingStep): Pose | null {
  return posesIn(step).find((pose) => !proving.takes.some((take) => take.pose === pose)) ?? null;
}
