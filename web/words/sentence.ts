import type { Session } from '../../shared/session/fold.ts';
import {
  type HeightRun,
  type Placement,
  placementKey,
  placementsOf,
  placeWords,
  type Run,
} from '../../shared/survey/plan.ts';
import { addableRun, isRepeat, runOf } from '../state/on-plan.ts';
import { capital, instrumentWord, type KindWords, kindWords } from './kinds.ts';
import { say } from './say.ts';

/** What to do next, in the largest words, and one line of context. */
export interface Sentence {
  readonly what: string;
  readonly context: string;
}

/** The end that the plus end of the level points to in this run: by name, or the station there. */
function plusEnd({ setup, plan, turnedRun }: Session, run: Run): string | null {
  if (run.reads !== 'tilt') return null;
  const facing = turnedRun === run.id ? -run.facing : run.facing;
  if (setup.kind === 'bed' && run.id === 'across') return facing === 1 ? 'the rear way' : 'the front way';
  if ('farEnd' in setup) return `the ${facing === 1 ? setup.farEnd : setup.startEnd}`;
  const names = plan.lines[run.line] ?? [];
  return (facing === 1 ? names.at(-1) : names[0]) ?? null;
}

/** What is done in a run, as a title: "Front way, coming back". */
export function runTitle({ setup }: Session, run: Run): string {
  const { turn } = kindWords[setup.kind];
  if (!turn || run.reads === 'tilt') return capital(run.words);
  const bars: Record<string, string> = { top: 'Top of the bar', side: 'Side of the bar' };
  const what = setup.kind === 'bar' ? (bars[run.line] ?? 'Bar') : kindWords[setup.kind].name;
  return `${what}, ${run.artefact?.turned ? turn.done : 'as it stands'}${run.again ? ', once more' : ''}`;
}

/** What to do next in the survey. `standsOn` is where the instrument still stands after a take, if it does. */
export function nextSentence(session: Session, standsOn: Placement | null): Sentence {
  const { next } = session;
  const run = next && runOf(session, next.run);
  if (!next || !run) return allRead(session);
  if (session.sweeping?.run === run.id) return slidingOn(session, next, run);
  return { what: task(session, next, run, standsOn), context: contextOf(session, next, run) };
}

/** What to do while the tip slides on without a stop. */
function slidingOn(session: Session, next: Placement, run: Run): Sentence {
  const places = placementsOf(run);
  const at = places.findIndex((place) => placementKey(place) === placementKey(next)) + 1;
  const values = { run: runTitle(session, run), at, count: places.length, last: placeWords(places.at(-1)!) };
  const place = placeWords(next);
  if (session.sweeping?.by === 'marks') {
    return {
      what: say('Slide on, mark {place}', { place }),
      context: say(
        '{run}, without a stop: place {at} of {count}. Press space or the pedal as the tip passes it.',
        values,
      ),
    };
  }
  const even = say(
    '{run}, at an even pace without a stop: press space or the pedal as the tip passes.',
    values,
  );
  return session.sweeping?.begun
    ? { what: say('Slide on evenly, mark {last}', values), context: even }
    : { what: say('Slide evenly, mark {place} first', { place }), context: even };
}

function contextOf(session: Session, next: Placement, run: Run): string {
  const places = placementsOf(run);
  const at = places.findIndex((place) => placementKey(place) === placementKey(next)) + 1;
  const plus = plusEnd(session, run);
  return `${lineCount(session, run)}${runTitle(session, run)}: reading ${at} of ${places.length}.${plus ? ` Plus end to ${plus}.` : ''}`;
}

/** "Line 7 of 8. " on a plate, where the lines are many. */
function lineCount({ setup, runs }: Session, run: Run): string {
  if (setup.kind !== 'plate') return '';
  const lines = [...new Set(runs.map(({ line }) => line))];
  return `Line ${lines.indexOf(run.line) + 1} of ${lines.length}. `;
}

function task(session: Session, next: Placement, run: Run, standsOn: Placement | null): string {
  const { setup, counted } = session;
  const { tool } = kindWords[setup.kind];
  const place = placeWords(next);
  if (counted.has(placementKey(next))) return `Read ${place} again`;
  const turn = turnBefore(session, run);
  const verbs = tasks(tool, place, setup.kind === 'dovetail' ? setup.form : 'male');
  if (turn) return `${turn}, ${verbs.turned}`;
  if (setup.instrument.source === 'typed') {
    return tool === 'pins' ? verbs.typed : `Read the ${instrumentWord(setup.kind)} on ${place}`;
  }
  const begins = setup.kind === 'plate' && placementKey(placementsOf(run)[0] ?? next) === placementKey(next);
  if (begins) return `Next line: set the level on ${place}`;
  if (!standsOn) return verbs.set;
  return standsOn.at.join() === next.at.join() ? verbs.again : verbs.move;
}

function tasks(tool: KindWords['tool'], place: string, form: 'male' | 'female') {
  if (tool === 'pins') {
    const size = form === 'male' ? 'over' : 'between';
    return {
      set: `Put the pins in at ${place}`,
      move: `Move the pins on to ${place}`,
      again: `Take the pins out, put them in at ${place} again`,
      turned: `put the pins in at ${place}`,
      typed: `Measure ${size} the pins at ${place}`,
    };
  }
  return {
    set: `Set the ${tool} on ${place}`,
    move: `Move the ${tool} on to ${place}`,
    again: `Lift the ${tool}, set it on ${place} again`,
    turned: `set ${tool === 'tip' ? 'the tip' : 'it'} on ${place}`,
    typed: '',
  };
}

/** What is to be turned before the first reading of a run, if anything is. */
function turnBefore(session: Session, run: Run): string | null {
  if (placementsOf(run).some((place) => session.counted.has(placementKey(place)))) return null;
  if (run.reads === 'height') {
    const order = kindWords[session.setup.kind].turn?.order ?? null;
    return isOtherwise(session, run) ? order : null;
  }
  const before = session.runs[session.runs.findIndex(({ id }) => id === run.id) - 1];
  const sameFeet =
    before?.reads === 'tilt' && before.line === run.line && before.feet.length === run.feet.length;
  return sameFeet && before.facing !== run.facing ? 'Turn the level end for end' : null;
}

/** Whether what a run is read against stands otherwise than for it, by the last sweep over the line. */
function isOtherwise(session: Session, run: HeightRun): boolean {
  const last = session.takes.at(-1)?.event.place.run;
  const before = last === undefined ? undefined : runOf(session, last);
  const sameLine = before?.reads === 'height' && before.line === run.line;
  const stood = sameLine ? (before.artefact?.turned ?? false) : false;
  return (run.artefact?.turned ?? false) !== stood;
}

function allRead(session: Session): Sentence {
  const { runs, skipped, setup } = session;
  const left = skipped.size > 0 ? ` ${skipped.size} skipped.` : '';
  const surface = capital(setup.surface);
  const done = `${surface}.${left} Finish when you are content.`;
  const more = addableRun(session);
  if (runs.length === 1 && more && !isRepeat(more)) {
    const way = more.reads === 'tilt' ? 'way' : 'sweep';
    return {
      what: `The ${way} out is read`,
      context: `${more.reads === 'tilt' ? 'Walk' : 'Sweep'} back, so that every reading is checked by a second one, or finish.${left}`,
    };
  }
  if (setup.kind === 'way') return { what: 'Out and back are read', context: done };
  return { what: 'Everything is read', context: done };
}
