import { describe, expect, test } from 'vitest';
import { demoSetups } from '../session/demo-setups.ts';
import type { Header } from '../session/events.ts';
import { setupSchema } from '../session/setup.ts';
import { type LessonInput, proveLesson, readLesson } from './lesson.ts';

const sound: LessonInput = {
  lesson: 1,
  title: 'A lesson',
  recording: 'front-way',
  about: 'a',
  lookFor: 'b',
  seen: 'c',
  unseen: 'd',
  moments: [
    { is: 'note', at: 3, text: 'look', arrows: [{ to: 'F2' }] },
    { is: 'stop', at: 5, text: 'what now?', right: 'wait', because: 'it swings' },
  ],
};
const header: Header = {
  recording: 1,
  id: 'front-way',
  program: 'test',
  t: 0,
  setup: setupSchema.parse(demoSetups.way),
};
const [note, stop] = sound.moments;
const reads = (document: unknown) => () => readLesson(JSON.stringify(document));

test('a sound lesson is read, with every default filled in', () => {
  const lesson = readLesson(JSON.stringify(sound));
  expect(lesson.names).toBe('shown');
  expect(lesson.moments[0]!.arrows).toEqual([{ to: 'F2', says: '' }]);
  expect(() => proveLesson(lesson, header, 5)).not.toThrow();
});

describe('a mistake in a lesson is named with its place', () => {
  test.each([
    [{ ...sound, moments: [note, { ...stop, right: 'hope' }] }, 'moments[1].right'],
    [{ ...sound, moments: [{ ...note, text: undefined }] }, 'moments[0].text: this is missing'],
    [{ ...sound, moments: [{ ...note, arrows: [{ to: 'F2', colour: 'red' }] }] }, 'moments[0].arrows[0]'],
    [{ ...sound, moments: [stop, note] }, 'moments[1].at: 3 comes before the moment above it'],
    [{ ...sound, moments: [{ ...note, at: -1 }] }, 'moments[0].at'],
    [{ ...sound, moments: [{ ...note, at: 1.5 }] }, 'moments[0].at'],
    [{ ...sound, lesson: 2 }, 'lesson'],
    [{ ...sound, title: '' }, 'title'],
    [[], 'lesson'],
    [null, 'lesson'],
  ])('%#: %s', (document, words) => {
    expect(reads(document)).toThrow(words);
    expect(reads(document)).toThrow(expect.objectContaining({ code: 'lesson.invalid' }));
  });

  test('what is no JSON', () => {
    expect(() => readLesson('{')).toThrow('lesson: is not JSON');
  });
});

describe('a lesson that does not fit the recording', () => {
  const prove = (changes: Partial<LessonInput>, lastSeq = 100) =>
    proveLesson(readLesson(JSON.stringify({ ...sound, ...changes })), header, lastSeq);

  test('belongs to another one', () => {
    expect(() => prove({ recording: 'rear-way' })).toThrow('recording: belongs to rear-way');
  });
  test('points behind its end', () => {
    expect(() => prove({}, 4)).toThrow('moments[1].at: there is no event 5');
  });
  test('points to a station that is not there', () => {
    const moments: LessonInput['moments'] = [{ is: 'note', at: 3, text: 'x', arrows: [{ to: 'Q9' }] }];
    expect(() => prove({ moments })).toThrow('moments[0].arrows[0].to: Q9 is no station of this survey');
  });
});
