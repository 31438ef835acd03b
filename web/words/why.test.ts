import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { readRecorded } from '../../shared/replay/recorded.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { behindLit, strengths } from '../state/behind-lit.ts';
import { surveyResult } from '../state/survey-result.ts';
import { whyHeight, whyReading } from './why.ts';

/** The lesson about a chip of 40 µm/m at F3–F4 on the way out, when everything was read and nothing repeated. */
async function chip() {
  const path = 'recordings/lessons/chip.jsonl';
  const { header, kept } = readRecorded(await readFile(path, 'utf8'), path);
  const takes = kept.filter(({ type }) => type === 'take');
  const session = fold(header, takes.slice(0, 16));
  return { session, result: resultOf(session), half: fold(header, takes.slice(0, 8)) };
}

test('a suspect is explained by its residual and its redundancy', async () => {
  const { session, result } = await chip();
  const words = whyReading(session, result, { run: 'front way out', at: ['F3', 'F4'] });
  // Two readings of one step, each walk with a zero of its own: half of 7/8 of an error shows.
  expect(words[0]).toMatch(/^F3 – F4 \(front way, going out\): it reads 1[78]\.\d µm\/m more than/);
  expect(words[1]).toMatch(/^Of an error in this reading, 44 % shows .* about (39|40|41)\.\d µm\/m\.$/);
  expect(words[2]).toMatch(/^Readings scatter by 0\.30 µm\/m; chance would leave a residual of about 0\.20/);
  expect(words[3]).toMatch(/F3 – F4 \(front way, coming back\) has as large a residual/);
});

test('a sound reading is not suspect, and one that nothing checks is said to be so', async () => {
  const { session, result, half } = await chip();
  expect(whyReading(session, result, { run: 'front way out', at: ['F0', 'F1'] })[0]).toContain('it reads');
  const [first, second] = whyReading(half, resultOf(half), { run: 'front way out', at: ['F0', 'F1'] });
  expect(first).toBe('Nothing checks F0 – F1 (front way, going out).');
  expect(second).toContain('unseen');
  expect(whyReading(session, result, { run: 'front way out', at: ['F0', 'F7'] })).toEqual([]);
});

test('a height is explained by the readings that make it', async () => {
  const { session } = await chip();
  const lit = { is: 'height', line: 'front way', station: 'F2' } as const;
  const survey = surveyResult(session, 'ends')!;
  const behind = behindLit(session, survey, lit, 'ends');
  // Out and back alike, by the end line: (1 − 2/8) · 150 mm / 2 on this side, −2/8 · 150 mm / 2 beyond.
  expect(behind[0]!.weight).toBeCloseTo(0.05625, 9);
  expect(behind[5]!.weight).toBeCloseTo(-0.01875, 9);
  expect(strengths(behind).get('front way out:F0-F1')).toBeCloseTo(1, 9);
  expect(whyHeight(session, lit, behind)).toBe(
    '16 readings make the height of F2; the darker, the more it counts. F0 – F1 (front way, going out) counts most: had it read 1 µm/m more, F2 would stand 0.056 µm higher.',
  );
  const end = { ...lit, station: 'F0' };
  expect(whyHeight(session, end, behindLit(session, survey, end, 'ends'))).toContain('by definition');
});
