import type { Placement } from '../survey/plan.ts';

/** What a survey can notice, the most urgent first: what spoils every take to come, then what can still be repeated. */
export const noticeCodes = [
  'unit-changed',
  'broken-off',
  'moved-in-break',
  'slip',
  'suspect',
  'lone-jump',
  'untied',
  'turned-alone',
  'not-turned',
  'stream-lost',
  'closure',
  'drift',
  'sentinel',
  'scatter',
  'unsettled',
  'measured-length',
  'foot-spacing',
  'resolution',
  'temperature',
  'drift-or-bow',
  'unchecked',
] as const;
export type NoticeCode = (typeof noticeCodes)[number];

/** Something about a survey that a person should know while it can still be put right. */
export interface Notice {
  readonly code: NoticeCode;
  /** In plain words, with what to do. */
  readonly text: string;
  /** The placement to repeat or to look at. */
  readonly place?: Placement;
  /** True: something is wrong, or will be. False: good to know. */
  readonly warns: boolean;
}

/** What the notices want to know beside the session, where it is known. */
export interface Circumstances {
  /** Smallest step that the instrument shows, in the unit of the set-up. */
  readonly resolution?: number;
  /** Depth of the part from top to bottom, mm. */
  readonly depthMm?: number;
  /** Temperatures of the part's top and bottom, °C. */
  readonly topC?: number;
  readonly bottomC?: number;
}
