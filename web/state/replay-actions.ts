import type { Lesson } from '../../shared/lesson/lesson.ts';
import { written } from '../words/reader.ts';
import { say } from '../words/say.ts';
import type { Action } from './actions.ts';
import type { PageState } from './page-state.ts';
import { goTo, type Replay } from './replay.ts';
import { replaying, withLesson } from './replaying.ts';

/** A lesson with nothing in it yet, beside a recording. */
function emptyLesson({ playback }: Replay, language: string): Lesson {
  const { id, setup } = playback.recorded.header;
  return {
    lesson: 1,
    language,
    title: `${setup.part}, ${setup.surface}`,
    recording: id,
    about: written(say('What happened.')),
    lookFor: written(say('What to look for.')),
    seen: written(say('What mathematics can see.')),
    unseen: written(say('What it cannot see.')),
    names: 'shown',
    moments: [],
  };
}

export const writing: Action = {
  id: 'write-lesson',
  word: ({ replay }) =>
    replay?.writing
      ? say('Try the lesson')
      : replay?.lesson
        ? say('Change the lesson')
        : say('Write a lesson'),
  keys: ['l'],
  hint: () => 'L',
  can: ({ replay }) => replay !== null,
  run: (page) =>
    page.turn((state) =>
      replaying(state, (replay) => {
        const lesson = replay.lesson ?? emptyLesson(replay, state.language);
        return replay.writing
          ? goTo(withLesson(replay, lesson, false), -1)
          : withLesson(replay, lesson, true);
      }),
    ),
};

export const beside: Action = {
  id: 'beside',
  word: ({ pointing }: PageState) =>
    pointing.at === 'compare' ? say('Back to the replay') : say('Compare with another'),
  keys: ['o'],
  hint: () => 'O',
  can: ({ replay }) => replay !== null,
  run(page) {
    const { pointing } = page.store.get();
    page.change({ pointing: { at: pointing.at === 'compare' ? 'nothing' : 'compare' } });
  },
};

export const replayActions = [writing, beside];
