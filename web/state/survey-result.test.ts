import { expect, test } from 'vitest';
import { resultOf } from '../../shared/session/result.ts';
import { sampleSession, sampleTake } from '../sample-session.ts';
import { surveyResult, tiedPart } from './survey-result.ts';

const slopes = [10, 4, -8, -2, 6, 11];
const whole = sampleSession(slopes.map((slope, k) => sampleTake(k, slope)));

test('what is shown is what the reduction says', () => {
  const survey = surveyResult(whole, 'leastSquares');
  expect(survey?.result).toEqual(resultOf(whole, 'leastSquares'));
  expect(survey?.stations.map(({ name }) => name)).toEqual(['F0', 'F1', 'F2', 'F3', 'F4', 'F5', 'F6']);
  expect(surveyResult(whole, 'leastSquares')).toBe(survey);
});

test('nothing read: nothing to show', () => {
  expect(surveyResult(sampleSession([]), 'ends')).toBeNull();
});

test('a step that nobody read parts the way: the longer part is shown, the step named', () => {
  const session = sampleSession([0, 2, 3, 4].map((k) => sampleTake(k, slopes[k] ?? 0)));
  const survey = surveyResult(session, 'ends');
  expect(survey?.cutAt).toBe('F1–F2');
  expect(survey?.stations.map(({ name }) => name)).toEqual(['F2', 'F3', 'F4', 'F5']);
});

test('a step skipped going out and read coming back ties the way together', () => {
  const session = sampleSession([
    ...[0, 2, 3, 4, 5].map((k) => sampleTake(k, slopes[k] ?? 0)),
    { type: 'phase', walk: 'back' },
    ...[5, 4, 3, 2, 1].map((k) => sampleTake(k, slopes[k] ?? 0, 'back')),
  ]);
  expect(tiedPart(session).cutAt).toBeNull();
  expect(surveyResult(session, 'ends')?.stations).toHaveLength(7);
});
