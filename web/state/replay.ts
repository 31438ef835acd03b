import type { Answer, Lesson } from '../../shared/lesson/lesson.ts';
import { Folded } from '../../shared/replay/folded.ts';
import { type Mark, marksOf } from '../../shared/replay/marks.ts';
import { steadyLimits } from '../../shared/replay/needle.ts';
import { type Recorded, readRecorded } from '../../shared/replay/recorded.ts';
import { lastNotBeyond } from '../../shared/replay/search.ts';

/** A recording that the page holds, ready to be shown at any moment: it needs no daemon. */
export interface Playback {
  readonly recorded: Recorded;
  readonly folded: Folded;
  readonly limits: ReturnType<typeof steadyLimits>;
  readonly marks: readonly Mark[];
  /** The file as it was opened. */
  readonly text: string;
}

/**
 * @param name of the file, for the error
 * @throws WayscribeError `recording.broken` with the number of the line
 */
export function playbackOf(text: string, name: string): Playback {
  const recorded = readRecorded(text, name);
  const limits = steadyLimits(recorded.header);
  return { recorded, folded: new Folded(recorded), limits, marks: marksOf(recorded, limits), text };
}

/** Where a replay stands, and what lesson lies beside it. */
export interface Replay {
  readonly playback: Playback;
  /** Place in the recording; -1 before its first event. */
  readonly place: number;
  readonly playing: boolean;
  readonly speed: number;
  readonly lesson: Lesson | null;
  /** The moment of the lesson that is shown: -1 its introduction, as many as there are its end. */
  readonly moment: number;
  /** What was answered at the stop points, by moment. */
  readonly answers: Readonly<Record<number, Answer>>;
  /** A lesson is being written. */
  readonly writing: boolean;
  /** Another recording of the same part, to be held against this one. */
  readonly beside: Playback | null;
}

export function replayOf(playback: Playback, lesson: Lesson | null): Replay {
  return {
    playback,
    place: -1,
    playing: false,
    speed: 1,
    lesson,
    moment: -1,
    answers: {},
    writing: false,
    beside: null,
  };
}

export function endOf({ playback }: Replay): number {
  return playback.recorded.seq.length - 1;
}

/** Time into the recording at a place, ms. */
export function msAt({ playback }: Replay, place: number): number {
  return place < 0 ? 0 : playback.recorded.atMs[place]!;
}

/** The place of a moment of the lesson. */
export function placeOfMoment({ playback, lesson }: Replay, moment: number): number {
  return lastNotBeyond(playback.recorded.seq, lesson!.moments[moment]!.at);
}

/** The first stop point that is not answered yet, by moment; null when there is none. */
export function openStop({ lesson, answers, writing }: Replay): number | null {
  if (!lesson || writing) return null;
  const found = lesson.moments.findIndex(({ is }, k) => is === 'stop' && answers[k] === undefined);
  return found < 0 ? null : found;
}

/** As far as one may go: what follows an open stop point is hidden. */
export function reachOf(replay: Replay): number {
  const stop = openStop(replay);
  return stop === null ? endOf(replay) : placeOfMoment(replay, stop);
}

/** The question that is asked now, by moment; null when none is. */
export function askedNow(replay: Replay): number | null {
  const stop = openStop(replay);
  return stop !== null && stop === replay.moment ? stop : null;
}

/** Jumps. What is hidden stays hidden. */
export function goTo(replay: Replay, wanted: number): Replay {
  const place = Math.max(-1, Math.min(wanted, reachOf(replay)));
  const { lesson } = replay;
  if (!lesson || replay.writing) return { ...replay, place };
  const open = openStop(replay) ?? lesson.moments.length - 1;
  let moment = -1;
  while (moment < open && placeOfMoment(replay, moment + 1) <= place) moment += 1;
  return { ...replay, place, moment: place < 0 && wanted < 0 ? -1 : moment };
}

/** Goes on as far as `wanted`, and stops at the next moment of the lesson before that. */
export function advance(replay: Replay, wanted: number): Replay {
  const { lesson, moment } = replay;
  if (askedNow(replay) !== null) return { ...replay, playing: false };
  const next = moment + 1;
  if (lesson && !replay.writing && next < lesson.moments.length) {
    const place = placeOfMoment(replay, next);
    if (place <= wanted) return { ...replay, place, moment: next, playing: false };
  }
  const end = endOf(replay);
  if (wanted < end) return { ...replay, place: Math.max(wanted, replay.place) };
  const over = lesson && !replay.writing && replay.place >= end ? lesson.moments.length : moment;
  return { ...replay, place: end, moment: over, playing: false };
}

/** The place of the next, or of the last, thing that a person did. */
export function stepFrom({ playback, place }: Replay, by: 1 | -1): number {
  const { kept, keptAt } = playback.recorded;
  const done = (k: number) => !['gap', 'discarded', 'unit'].includes(kept[k]!.type);
  let k = lastNotBeyond(keptAt, by > 0 ? place : place - 1);
  if (by > 0) for (k += 1; k < kept.length && !done(k); ) k += 1;
  else while (k >= 0 && !done(k)) k -= 1;
  if (k < 0) return -1;
  return keptAt[k] ?? playback.recorded.seq.length - 1;
}
