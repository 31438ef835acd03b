import { describe, expect, test } from 'vitest';
import { lineOf } from '../../shared/figures/line.ts';
import { lineReference } from '../../shared/figures/line-reference.ts';
import { lineMetal } from '../../shared/metal/line-metal.ts';
import { INK_FILM_UM, type TargetSpec } from '../../shared/metal/metal.ts';
import { passesFor } from '../../shared/metal/passes.ts';
import { toInternal } from '../../shared/units.ts';
import { adjustedHeights, indices } from '../tools/adjusted-heights.ts';

// Facts of the trade; each marked with where it comes from.

const spec: TargetSpec = { shape: 'flat', crownUm: 0, tilt: 'free', biteUm: 5.08, stopPasses: 0 };

function contactOf(heightUm: number[]) {
  const adjusted = adjustedHeights({ xMm: heightUm.map((_, k) => 50 * k), heightUm });
  const line = lineOf(adjusted, indices(heightUm.length));
  return lineMetal(adjusted, line, lineReference('ends', line), spec).contact;
}

/** A parabola over 11 stations, `c` µm high in the middle. */
const bow = (c: number) => indices(11).map((k) => (4 * c * k * (10 - k)) / 100);

// Common practice, no source: a piece that turns about its middle is crowned, about its ends hollow,
// about points well in from its ends close to flat.
describe('the hinge test', () => {
  test('a crown rests on its middle, a hollow on its ends', () => {
    expect(contactOf(bow(20)).restsOn).toEqual(['F5']);
    expect(contactOf(bow(-20)).restsOn).toEqual(['F0', 'F10']);
  });

  test('close to flat rests well in from its ends', () => {
    const twoHumps = bow(0);
    twoHumps[3] = 1;
    twoHumps[7] = 1;
    expect(contactOf(twoHumps).restsOn).toEqual(['F3', 'F7']);
  });
});

// Shop talk (practicalmachinist thread, a supplier's page): a rolled-on film is about 0.0001 in.
test('a film of marking ink', () => {
  expect(INK_FILM_UM).toBeCloseTo(toInternal('height', 0.0001, 'in'), 1);
  expect(contactOf(bow(-2)).inked).toHaveLength(11);
  expect(contactOf(bow(-20)).inked).toEqual(['F0', 'F10']);
});

// Common practice, no source: one power-scraped mark is about 0.0002 in deep. A scraping teacher's posts
// (hobby-machinist.com/threads/95894): a taper of 0.002 in takes ten passes at the thick end, none at the thin.
test('step scraping: 0.002 in at 0.0002 in a pass', () => {
  const bite = toInternal('height', 0.0002, 'in');
  expect(bite).toBeCloseTo(5.08, 9);
  expect(passesFor(toInternal('height', 0.002, 'in'), bite)).toBe(10);
  expect(passesFor(0, bite)).toBe(0);
});
