import { describe, expect, test } from 'vitest';
import { reduce } from '../reduce.ts';
import { validateSheet } from '../sheet/sheet.ts';

/** Constructed: a way walked with a level and swept once with an indicator of quite another weight. */
function way(sweepSigma: number, walks: number) {
  const names = ['S0', 'S1', 'S2', 'S3'];
  return reduce(
    validateSheet({
      sheet: 1,
      kind: 'way',
      stations: Object.fromEntries(names.map((name, k) => [name, [200 * k, 0]])),
      lines: { w: names },
      walks: Array.from({ length: walks }, (_, k) => ({
        id: `walk ${k}`,
        sigma: 1,
        readings: [-2, 0, 2].map((value, step) => [names[step], names[step + 1], value]),
      })),
      sweeps: [
        { id: 's', sigma: sweepSigma, readings: [0, 1.5, 1, 0.5].map((value, k) => [names[k], value]) },
      ],
    }),
  );
}

describe.each([1, 2])('with %i walks', (walks) => {
  test.each([1, 30, 100, 200, 300, 500, 1000, 5000, 25_400])(
    'a sweep of sigma %d µm is weighed in',
    (sigma) => {
      const { fit, readings, lines } = way(sigma, walks);
      expect(fit.datumDefect).toBe(2);
      expect(fit.degreesOfFreedom).toBe(3 * walks + 4 - (4 + walks + 2) + 2);
      const spare = readings.reduce((sum, { redundancy }) => sum + redundancy, 0);
      expect(spare).toBeCloseTo(fit.degreesOfFreedom, 5);
      // The heavier the walks, the nearer to what they say alone: rises of −0.4, 0 and 0.4 µm.
      expect(Math.abs(lines.w!.stations.S1!.heightUm - -0.4)).toBeLessThan(0.04 / sigma ** 2 + 1e-9);
    },
  );
});
