import type { Run, TiltRun } from '../survey/plan.ts';
import type { TakeEvent } from './events.ts';

/** A run with what counts of it, in the order in which it was taken. */
export interface TakenRun {
  readonly run: Run;
  readonly takes: readonly TakeEvent[];
}

/** What counts of a walk of a level. */
export interface TakenTilt extends TakenRun {
  readonly run: TiltRun;
}

export function isTiltRun(one: TakenRun): one is TakenTilt {
  return one.run.reads === 'tilt';
}
