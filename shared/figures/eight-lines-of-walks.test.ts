import { expect, test } from 'vitest';
import { readingsOf, unionJackLines } from '../../tests/tools/union-jack.ts';
import { eightLinePlate } from './eight-lines.ts';
import { eightLineSentence, eightLinesOfWalks, type Place, type TiltStep } from './eight-lines-of-walks.ts';

const place = (k: number): Place => [100 * (k % 5) - 70, 75 * Math.floor(k / 5) + 1000];

const walks = (perturbed: boolean): TiltStep[][] =>
  unionJackLines.map((line) =>
    readingsOf(line, perturbed).map((slopeUmPerM, k) => ({
      from: place(line.stations[k]!),
      to: place(line.stations[k + 1]!),
      slopeUmPerM,
    })),
  );

const turned = (walk: TiltStep[]): TiltStep[] =>
  walk.map(({ from, to, slopeUmPerM }) => ({ from: to, to: from, slopeUmPerM: -slopeUmPerM })).reverse();

test('the eight lines are found in any order and walked either way round', () => {
  const shuffled = walks(true)
    .reverse()
    .map((walk, i) => (i % 2 === 0 ? turned(walk) : walk));
  const found = eightLinesOfWalks(shuffled)!;
  expect(eightLinePlate(found).closuresUm.centreAlong).toBeCloseTo(-0.225, 9);
  expect(eightLinePlate(found).closuresUm.centreAcross).toBeCloseTo(-0.325, 9);
});

test('said in a sentence, with HIGH and LOW', () => {
  const sentence = (perturbed: boolean) =>
    eightLineSentence(eightLinePlate(eightLinesOfWalks(walks(perturbed))!));
  expect(sentence(true)).toContain(
    'the centre line along closes 0.2 µm LOW, the one across closes 0.3 µm LOW',
  );
  expect(sentence(false)).toContain(
    'the centre line along closes, the one across closes, and the plate is 9.5 µm',
  );
});

test('a line too few, a broken one or uneven steps are not the eight lines', () => {
  expect(eightLinesOfWalks(walks(false).slice(1))).toBeUndefined();
  const doubled = walks(false);
  doubled[0] = doubled[1]!;
  expect(eightLinesOfWalks(doubled)).toBeUndefined();
  const uneven = walks(false);
  const [first, second, ...rest] = uneven[2]!;
  const moved: Place = [first!.to[0] + 1, first!.to[1]];
  uneven[2] = [{ ...first!, to: moved }, { ...second!, from: moved }, ...rest];
  expect(eightLinesOfWalks(uneven)).toBeUndefined();
});
