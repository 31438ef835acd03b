import { expect, test } from 'vitest';
import { resultOf } from '../../shared/session/result.ts';
import { back, sampleSession, sampleTake, walkBack } from '../sample-session.ts';
import { surveyResult } from './survey-result.ts';

const slopes = [10, 4, -8, -2, 6, 11];
const whole = sampleSession(slopes.map((slope, k) => sampleTake(k, slope)));
const names = (session: typeof whole) =>
  surveyResult(session, 'ends')?.lines[0]?.stations.map(({ name }) => name);

test('what is shown is what the reduction says', () => {
  const survey = surveyResult(whole, 'leastSquares');
  expect(survey?.result).toEqual(resultOf(whole, 'leastSquares'));
  expect(names(whole)).toEqual(['F0', 'F1', 'F2', 'F3', 'F4', 'F5', 'F6']);
  expect(surveyResult(whole, 'leastSquares')).toBe(survey);
});

test('nothing read: nothing to show', () => {
  expect(surveyResult(sampleSession([]), 'ends')).toBeNull();
});

test('a step that nobody read parts the way: the longer part is shown, the step named', () => {
  const session = sampleSession([0, 2, 3, 4].map((k) => sampleTake(k, slopes[k] ?? 0)));
  expect(surveyResult(session, 'ends')?.cutAt).toBe('F1–F2');
  expect(names(session)).toEqual(['F2', 'F3', 'F4', 'F5']);
});

test('a step skipped going out and read coming back ties the way together', () => {
  const session = sampleSession([
    ...[0, 2, 3, 4, 5].map((k) => sampleTake(k, slopes[k] ?? 0)),
    walkBack,
    ...[5, 4, 3, 2, 1].map((k) => sampleTake(k, slopes[k] ?? 0, back)),
  ]);
  expect(surveyResult(session, 'ends')?.cutAt).toBeNull();
  expect(names(session)).toHaveLength(7);
});
