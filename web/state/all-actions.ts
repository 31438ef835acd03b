import { type Action, surveyActions } from './actions.ts';
import { devices } from './device-actions.ts';
import { drawingActions } from './drawing-actions.ts';
import { jobActions } from './job-actions.ts';
import { lookActions } from './look-actions.ts';
import { playerActions } from './player-actions.ts';
import { replayActions } from './replay-actions.ts';
import { resultActions } from './result-actions.ts';

/** Everything that can be done by key, in the order in which a key is looked up. */
export const allActions: readonly Action[] = [
  ...playerActions,
  ...replayActions,
  ...surveyActions,
  ...resultActions,
  ...drawingActions,
  ...jobActions,
  devices,
  ...lookActions,
];
