import { expect, test } from 'vitest';
import { surveyActions } from './actions.ts';
import { devices } from './device-actions.ts';
import { drawingActions } from './drawing-actions.ts';
import { lookActions } from './look-actions.ts';

test('no key means two things while a survey is on', () => {
  const actions = [...surveyActions, ...drawingActions, devices, ...lookActions];
  const keys = actions.flatMap((action) => action.keys);
  expect(keys.filter((key, k) => keys.indexOf(key) !== k)).toEqual([]);
});
