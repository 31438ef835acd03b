import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSession, sampleTake } from '../sample-session.ts';
import type { Reference } from './page-state.ts';
import { surveyResult } from './survey-result.ts';
import { trueShape } from './true-shape.ts';

test('a survey without error finds the true shape, on every reference, however the way lies', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 7, maxLength: 7 }),
      fc.constantFrom<Reference>('ends', 'leastSquares', 'minimumZone'),
      fc.double({ min: -100, max: 100, noNaN: true }),
      (heights, reference, zero) => {
        const readings = heights
          .slice(1)
          .map((height, k) => ((height - (heights[k] ?? 0)) * 1000) / 150 + zero);
        const plain = sampleSession(readings.map((reading, k) => sampleTake(k, reading)));
        const truthUm = Object.fromEntries(heights.map((height, k) => [`F${k}`, height]));
        const session = {
          ...plain,
          header: { ...plain.header, simulated: { scenario: 'constructed', truthUm } },
        };
        const survey = surveyResult(session, reference);
        if (!survey) throw new Error('there is a result');
        const [truth = []] = trueShape(session, survey, reference);
        expect(truth).toHaveLength(7);
        truth.forEach(({ heightUm }, k) => {
          expect(heightUm).toBeCloseTo(survey.lines[0]?.stations[k]?.heightUm ?? Number.NaN, 6);
        });
      },
    ),
    { numRuns: 40 },
  );
});
