import { describe, expect, test } from 'vitest';
import { adjustedHeights } from '../../tests/tools/adjusted-heights.ts';
import { areaOf } from '../figures/area.ts';
import { planeReference } from '../figures/plane-reference.ts';
import { areaMetal } from './area-metal.ts';
import type { TargetSpec } from './metal.ts';

const flat: TargetSpec = { shape: 'flat', crownUm: 0, tilt: 'free', biteUm: 5, stopPasses: 0 };

/** A grid of 3 × 3, 100 mm apart. */
function metal(heightUm: number[], spec: Partial<TargetSpec> = {}) {
  const adjusted = adjustedHeights({
    xMm: heightUm.map((_, k) => 100 * (k % 3)),
    yMm: heightUm.map((_, k) => 100 * Math.floor(k / 3)),
    heightUm,
  });
  const area = areaOf(adjusted);
  return areaMetal(adjusted, area, planeReference('leastSquares', area), { ...flat, ...spec });
}

const removals = (result: ReturnType<typeof metal>) =>
  Object.values(result.stations).map((station) => Math.round(station.removeUm * 1e6) / 1e6);

describe('plates', () => {
  test('a dome comes down to its corners, tilted as it lies', () => {
    const tilt = [0, 1, 2, 3, 4, 5, 6, 7, 8];
    expect(removals(metal([0, 6, 0, 6, 12, 6, 0, 6, 0].map((h, k) => h + tilt[k]!)))).toEqual([
      0, 6, 0, 6, 12, 6, 0, 6, 0,
    ]);
  });

  test('a dish, whose middle station is the middle: the level target cuts least deep', () => {
    const result = metal([12, 6, 12, 6, 0, 6, 12, 6, 12]);
    expect(removals(result)).toEqual([12, 6, 12, 6, 0, 6, 12, 6, 12]);
    expect(result.plan.map(({ stations }) => stations.length)).toEqual([4, 8, 8]);
    expect(result.contact.restsOn).toEqual(['F0', 'F2', 'F6', 'F8']);
  });

  test('one high station alone takes the ink and the strokes', () => {
    const result = metal([0, 0, 0, 0, 9, 0, 0, 0, 0]);
    expect(removals(result)).toEqual([0, 0, 0, 0, 9, 0, 0, 0, 0]);
    expect(result.contact).toEqual({ restsOn: ['F4'], inked: ['F4'] });
  });

  test('fixed tilt stays parallel to the plane in use', () => {
    expect(removals(metal([9, 0, 0, 0, 0, 0, 0, 0, 9], { tilt: 'fixed' }))).toEqual([
      9, 0, 0, 0, 0, 0, 0, 0, 9,
    ]);
  });

  test('a crown runs along x', () => {
    expect(removals(metal([0, 4, 0, 0, 4, 0, 0, 4, 0], { shape: 'crown', crownUm: 4 }))).toEqual(
      new Array(9).fill(0),
    );
  });
});
