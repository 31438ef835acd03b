import { readdir, readFile, stat } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { lessonListSchema, proveLesson, readLesson } from '../shared/lesson/lesson.ts';
import { scenarios } from './tools/lessons/all.ts';
import { Facts } from './tools/lessons/facts.ts';
import { goldenOf } from './tools/lessons/golden.ts';

const folder = 'recordings/lessons';
const text = (name: string) => readFile(`${folder}/${name}`, 'utf8');

describe.each(scenarios)('lesson $id', ({ id, tell }) => {
  test('its recording is whole, and every take is the mean of its readings', async () => {
    const { problems, closed } = await verifyRecording(`${folder}/${id}.jsonl`);
    expect(problems).toEqual([]);
    expect(closed).toBe(true);
  });

  test('is sound, fits its recording, and states no number but what the recording comes to', async () => {
    const { header, events } = await readRecording(`${folder}/${id}.jsonl`);
    const lesson = readLesson(await text(`${id}.lesson.json`));
    const facts = new Facts(header, events);
    proveLesson(lesson, header, facts.lastSeq);
    const written = JSON.stringify({ lesson: 1, recording: id, ...tell(facts) });
    expect(lesson).toEqual(readLesson(written));
  });

  test('comes to its golden result, and misses the true metal by what is said there', async () => {
    const { header, events } = await readRecording(`${folder}/${id}.jsonl`);
    expect(goldenOf(new Facts(header, events))).toEqual(JSON.parse(await text(`${id}.golden.json`)));
  });
});

const golden = async (id: string) => JSON.parse(await text(`${id}.golden.json`));

/** What was planted, worked out by hand from the scenario: constructed. */
describe('the planted faults do to the figures what arithmetic says', () => {
  test.each([
    // A parabola 20 µm deep.
    ['clean-walk', 20, 0],
    // Mirrored: out by twice its depth.
    ['sign-inverted', 20, 40],
    // 200 mm for 150: a third too much.
    ['foot-spacing', 26.67, 6.67],
    // 5 µm/m more at each of 16 takes, out and back: cancels.
    ['drift', 0, 0],
    ['level-not-straight', 20, 0],
    ['straight-not-level', 0.4, 0],
    // Flat to the middle, then −16·u²; at F5, u = 1/4: −1 over a line that lies at −10 there.
    ['three-references', 9, 0],
  ])('%s: straightness %d µm, off by %d µm', async (id, straightUm, offUm) => {
    const { straightness, truthError } = await golden(id);
    expect(Math.abs(straightness['front way'].ends - straightUm)).toBeLessThan(0.15);
    expect(Math.abs(truthError.offUm - offUm)).toBeLessThan(0.15);
  });

  test('one walk of a straight way with 5 µm/m of drift a take is a bow of 5 · 0.15 · 8²/8 = 6 µm', async () => {
    const { header, events } = await readRecording(`${folder}/drift.jsonl`);
    const facts = new Facts(header, events);
    const out = facts.upTo(facts.at(8)).line().straightness.ends.valueUm;
    expect(Math.abs(out - 6)).toBeLessThan(0.15);
  });

  test('twist of 1/15 µm/m a mm over 1200 mm is 80 µm/m, and over 300 mm of gauge 24 µm of wind', async () => {
    const { figures } = await golden('twist-by-feet');
    expect(Math.abs(figures.twist.value - 80)).toBeLessThan(0.5);
    expect(Math.abs(figures.wind.value - 24)).toBeLessThan(0.5);
  });
});

test('the list names every lesson there is, and all of it stays small', async () => {
  const list = lessonListSchema.parse(JSON.parse(await text('lessons.json')));
  expect(list.map(({ id }) => id)).toEqual(scenarios.map(({ id }) => id));
  const files = await readdir(folder);
  const known = scenarios.flatMap(({ id }) => [`${id}.jsonl`, `${id}.lesson.json`, `${id}.golden.json`]);
  expect(files.sort()).toEqual([...known, 'lessons.json'].sort());
  const sizes = await Promise.all(files.map(async (file) => (await stat(`${folder}/${file}`)).size));
  expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThan(2_000_000);
});
