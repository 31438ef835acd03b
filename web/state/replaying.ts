import type { Answer, Lesson } from '../../shared/lesson/lesson.ts';
import { proveLesson } from '../../shared/lesson/lesson.ts';
import { namelessSetup } from '../../shared/lesson/without-names.ts';
import { needleAt } from '../../shared/replay/needle.ts';
import type { Session } from '../../shared/session/fold.ts';
import { nothing, type PageState } from './page-state.ts';
import { askedNow, goTo, type Playback, type Replay, replayOf } from './replay.ts';

/**
 * The page while it plays a recording by itself. What the daemon says meanwhile goes to the page behind, which comes
 * back as it then is when the replay is closed.
 */

/**
 * @throws WayscribeError `lesson.invalid` when the lesson does not fit the recording
 */
export function openReplay(state: PageState, playback: Playback, lesson: Lesson | null): PageState {
  if (lesson) proveLesson(lesson, playback.recorded.header, playback.recorded.seq.at(-1) ?? 0);
  const behind = state.behind ?? state;
  const fresh: PageState = {
    ...state,
    behind: { ...behind, refusal: null },
    greeted: true,
    link: 'open',
    instruments: [],
    simulated: null,
    heardAt: null,
    refusal: null,
    pointing: nothing,
    guess: null,
    working: false,
    truth: false,
    relief: false,
    passes: false,
    lit: null,
  };
  const replay = replayOf(playback, lesson);
  // With a lesson from its beginning; without one, as the metal was found in the end.
  return show(fresh, replay);
}

export function closeReplay(state: PageState): PageState {
  if (!state.behind) return state;
  const { theme, muted } = state;
  return { ...state.behind, behind: null, replay: null, theme, muted };
}

/** The page at the place of the replay. */
function show(state: PageState, replay: Replay): PageState {
  const { playback, place, lesson } = replay;
  const { recorded, folded, limits } = playback;
  const same =
    state.replay?.playback === playback && state.replay.place === place && state.replay.lesson === lesson;
  if (same) return { ...state, replay };
  const then = folded.at(place);
  const session = lesson?.names === 'left out' ? nameless(then) : then;
  const lit = state.session?.counted === session.counted ? state.lit : null;
  return { ...state, replay, session, lit, ...needleAt(recorded, limits, place) };
}

/** Changes the replay and shows it; without a replay nothing happens. */
export function replaying(state: PageState, change: (replay: Replay) => Replay): PageState {
  return state.replay ? show(state, change(state.replay)) : state;
}

/** An answer at the stop point that is asked now; what follows is no longer hidden. */
export function answered(replay: Replay, answer: Answer): Replay {
  const stop = askedNow(replay);
  return stop === null ? replay : { ...replay, answers: { ...replay.answers, [stop]: answer } };
}

/** Shows another lesson beside the same recording, from where it stands. */
export function withLesson(replay: Replay, lesson: Lesson, writing: boolean): Replay {
  return goTo({ ...replay, lesson, writing, answers: {}, playing: false }, replay.place);
}

const remembered = new WeakMap<Session, Session>();

function nameless(session: Session): Session {
  const known = remembered.get(session);
  if (known) return known;
  const without = { ...session, setup: namelessSetup(session.setup) };
  remembered.set(session, without);
  return without;
}
