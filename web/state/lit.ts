import type { Placement } from '../../shared/survey/plan.ts';

/** What is being explained in the working: a height by the readings that make it, or a reading by what checks it. */
export type Lit =
  | { readonly is: 'height'; readonly line: string; readonly station: string }
  /** How far the second station stands over the first one, across a bed, against how the first pair lies. */
  | {
      readonly is: 'across';
      readonly pair: readonly [string, string];
      readonly against: readonly [string, string];
    }
  | { readonly is: 'reading'; readonly place: Placement };
