import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { compared } from './compared.ts';
import { Folded } from './folded.ts';
import { habitsOf } from './habits.ts';
import { marksOf } from './marks.ts';
import { steadyLimits } from './needle.ts';
import { readRecorded } from './recorded.ts';

async function lesson(id: string) {
  const recorded = readRecorded(await readFile(`recordings/lessons/${id}.jsonl`, 'utf8'), id);
  const session = new Folded(recorded).at(recorded.seq.length - 1);
  const marks = marksOf(recorded, steadyLimits(recorded.header));
  return { session, habits: habitsOf(session, marks, recorded.atMs.at(-1)!) };
}

test('two surveys of one way lie on one scale; a sign that is inverted differs at every station between the ends', async () => {
  const [clean, mirrored] = [await lesson('clean-walk'), await lesson('sign-inverted')];
  const [line] = compared(clean.session, mirrored.session);
  expect(line!.stations.map(({ name }) => name)).toEqual(clean.session.plan.lines['front way']);
  const [, ...between] = line!.stations.slice(0, -1);
  expect(between.every(({ differs }) => differs)).toBe(true);
  // A parabola 20 µm deep and its mirror.
  expect(Math.abs(line!.stations[4]!.differenceUm - 40)).toBeLessThan(0.2);
  expect(compared(clean.session, clean.session)[0]!.stations.some(({ differs }) => differs)).toBe(false);
});

test('other parts, and the same names at other places, are not compared', async () => {
  const [clean, bed, wide] = [
    await lesson('clean-walk'),
    await lesson('twist-by-feet'),
    await lesson('foot-spacing'),
  ];
  expect(() => compared(clean.session, bed.session)).toThrow('no stations in common');
  // Only F0 stands at the same place.
  expect(() => compared(clean.session, wide.session)).toThrow('no stations in common');
});

test('habits count what was taken back, repeated, taken too soon, and how long was waited', async () => {
  const [clean, chip, hasty] = [await lesson('clean-walk'), await lesson('chip'), await lesson('too-soon')];
  expect(clean.habits).toMatchObject({ takes: 17, takenBack: 1, repeats: 0, unsteady: 0 });
  expect(chip.habits).toMatchObject({ takes: 17, takenBack: 0, repeats: 1 });
  expect(hasty.habits.unsteady).toBe(8);
  expect(clean.habits.meanWaitMs!).toBeGreaterThan(500);
  expect(clean.habits.longestWaitMs!).toBeGreaterThanOrEqual(clean.habits.meanWaitMs!);
});
