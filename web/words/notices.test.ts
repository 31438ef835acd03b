import { expect, test } from 'vitest';
import { back as backRun, out as outRun, sampleSession, sampleTake, walkBack } from '../sample-session.ts';
import { surveyResult } from '../state/survey-result.ts';
import { firstOf, surveyNotices } from './notices.ts';

const slopes = [10, 4, -8, -2, 6, 11];
const instrument = {
  name: 'L2',
  source: 'cable',
  port: 'p',
  profile: 'line-decimal',
  unit: 'um/m',
  sigma: 0.5,
} as const;
const notice = (takes: Parameters<typeof sampleSession>[0]) => {
  const session = sampleSession(takes, { instrument });
  return firstOf(surveyNotices(session, surveyResult(session, 'ends'))).notice;
};
const out = slopes.map((slope, k) => sampleTake(k, slope));
const back = (wrongAt: number) => [
  walkBack,
  ...[5, 4, 3, 2, 1, 0].map((k) => sampleTake(k, (slopes[k] ?? 0) + (k === wrongAt ? 9 : 0.1 * k), backRun)),
];

test('one walk alone: nothing checks it', () => {
  expect(notice(out)?.text).toMatch(/^Nothing checks these readings/);
  expect(notice([])).toBeNull();
});

test('a step whose two readings differ is named, with what to do', () => {
  expect(notice([...out, ...back(3)])).toMatchObject({ warns: true });
  expect(notice([...out, ...back(3)])?.text).toMatch(/^F3 – F4 was read twice, .* apart; .* Wipe/);
  expect(notice([...out, ...back(-1)])).toBeNull();
});

test('a reading that was taken unsteady is said to be', () => {
  const takes = [sampleTake(0, 10, outRun, { steadiness: 'settling' }), ...out.slice(1)];
  expect(notice(takes)?.text).toBe('Taken before it was steady: F0 – F1. Repeat when it is quiet.');
});
