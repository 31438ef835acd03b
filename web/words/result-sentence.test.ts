import { expect, test } from 'vitest';
import { sampleSession, sampleTake } from '../sample-session.ts';
import { surveyResult } from '../state/survey-result.ts';
import { resultSentence } from './result-sentence.ts';

const hollow = [-20, -12, -4, 4, 12, 20];
const instrument = {
  name: 'L2',
  source: 'cable',
  port: 'p',
  profile: 'line-decimal',
  unit: 'um/m',
  sigma: 1.5,
} as const;
const session = (count: number) =>
  sampleSession(
    hollow.slice(0, count).map((slope, k) => sampleTake(k, slope)),
    { instrument, limit: 10 },
  );

test('what the metal is like, how well that is known, and the verdict', () => {
  const whole = session(6);
  const { what, context } = resultSentence(whole, surveyResult(whole, 'ends'), 'ends');
  // Running sum of 150 mm steps: −3, −4.8, −5.4, −4.8, −3, 0 µm; the deepest is F3.
  expect(what).toBe('Front way 5.4 µm out of straight: hollow, F3 lowest.');
  expect(context).toBe('One way only: 6 readings, nothing checks them. Limit 10 µm: within.');
});

test('a result for a part of the way says so', () => {
  const part = session(4);
  expect(resultSentence(part, surveyResult(part, 'ends'), 'ends').context).toContain(
    'Only F0 to F4: 5 of 7 stations.',
  );
});

test('nothing read: no number', () => {
  expect(resultSentence(session(0), null, 'ends').what).toBe('Front way: nothing was read');
});
