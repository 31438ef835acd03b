import { expect, test } from 'vitest';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import { fold } from '../../shared/session/fold.ts';
import { headerOf, numbered, takeAt } from '../sample-session.ts';
import { surveyResult } from './survey-result.ts';

test('over the motion a slope shows, and a height is sure to σ·√(1 − 1/n) against the mean of n (constructed)', () => {
  const stations = 5;
  const header = headerOf({
    ...demoSetups.slide,
    faces: 'top',
    stations,
    back: 'no',
    instrument: {
      name: 'D',
      source: 'cable',
      port: 'p',
      profile: 'sum-frame',
      unit: 'um',
      sigma: 0.8,
    },
  });
  const readings = [40, 43, 41, 47, 44];
  const places = fold(header, []).placements;
  const takes = places.map((place, k): NewEvent => takeAt(place, readings[k] ?? 0));
  const line = surveyResult(fold(header, numbered(takes)), 'ends')?.lines[0];
  const mean = readings.reduce((sum, value) => sum + value, 0) / stations;
  expect(line?.stations).toHaveLength(stations);
  line?.stations.forEach(({ heightUm, uUm }, k) => {
    expect(heightUm).toBeCloseTo((readings[k] ?? 0) - mean, 9);
    expect(uUm).toBeCloseTo(0.8 * Math.sqrt(1 - 1 / stations), 9);
  });
});
