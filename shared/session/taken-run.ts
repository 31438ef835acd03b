import type { Run } from '../survey/plan.ts';
import type { TakeEvent } from './events.ts';

/** A run with what counts of it, in the order in which it was taken. */
export interface TakenRun {
  readonly run: Run;
  readonly takes: readonly TakeEvent[];
}
