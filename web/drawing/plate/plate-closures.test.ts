import { describe, expect, test } from 'vitest';
import { resultOf } from '../../../shared/session/result.ts';
import type { SetupInput } from '../../../shared/session/setup.ts';
import { type Added, exactSurvey } from '../../../tests/tools/exact-survey.ts';
import { closureWords, plateClosures, worstOf } from './plate-closures.ts';
import type { PlateSession } from './plate-session.ts';

/** Constructed: a dome, walked out and back over lines of 4, 6 and 4 steps. */
const setup = (pattern: 'eight lines' | 'grid'): SetupInput => ({
  kind: 'plate',
  part: 'plate',
  surface: 'top',
  lengthMm: 650,
  widthMm: 450,
  baseMm: 100,
  pattern,
  instrument: { name: 'level', source: 'typed', unit: 'um/m', sigma: 0.5 },
});
const dome = (x: number, y: number) => 0.01 * x - ((x - 300) / 150) ** 2 - ((y - 200) / 150) ** 2;
const closures = (pattern: 'eight lines' | 'grid', added: Added, takes?: number) => {
  const session = exactSurvey(setup(pattern), dome, added, takes) as PlateSession;
  return plateClosures(session, session.counted.size > 0 ? resultOf(session) : null);
};

describe.each(['eight lines', 'grid'] as const)('%s', (pattern) => {
  test('readings without error close everywhere, whatever the zero', () => {
    const all = closures(pattern, () => 25);
    expect(all.length).toBeGreaterThan(8);
    for (const { station, closureUm } of all) expect(closureUm, station).toBeLessThan(1e-6);
    expect(closureWords(worstOf(all)!)).toMatch(/^0\.0+ µm, as good as the level$/);
  });

  test('nothing is closed before anything is read', () => {
    expect(closures(pattern, () => 0, 0)).toEqual([]);
  });
});

test('a step read too high both times shows at a crossing of its line, in words too', () => {
  const all = closures('eight lines', (_, at) => (at.join() === 'NL,L1' ? 20 : 0));
  const worst = worstOf(all)!;
  // 20 µm/m over 100 mm is 2 µm; the other lines take their share.
  expect(worst.lines).toContain('left edge');
  expect(worst.closureUm).toBeGreaterThan(0.5);
  expect(worst.closureUm).toBeLessThan(2);
  expect(closureWords(worst)).toContain('more than the level scatters');
});

test('a level turned about counts the other way: no closure opens', () => {
  const session = exactSurvey({ ...setup('eight lines'), faces: 'start' } as SetupInput, dome, () => -12);
  for (const { closureUm } of plateClosures(session as PlateSession, resultOf(session))) {
    expect(closureUm).toBeLessThan(1e-6);
  }
});
