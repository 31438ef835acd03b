import { emptyWindow, observe, type SteadyLimits, type Window } from '../live/steadiness.ts';
import type { SessionEvent } from '../session/events.ts';
import { fold } from '../session/fold.ts';
import { placeWords } from '../survey/plan.ts';
import type { Recorded } from './recorded.ts';

/** Something on the time line. Times are ms into the replay. */
export type Mark =
  | { readonly is: 'walk'; readonly fromMs: number; readonly toMs: number; readonly words: string }
  | { readonly is: 'wait'; readonly fromMs: number; readonly toMs: number }
  | { readonly is: 'pause'; readonly atMs: number; readonly ms: number }
  | {
      readonly is: 'take';
      readonly atMs: number;
      readonly seq: number;
      readonly words: string;
      /** Why it does not count any more; not there when it counts. */
      readonly out?: string;
    }
  | { readonly is: 'gap'; readonly fromMs: number; readonly toMs: number; readonly why: string }
  | { readonly is: 'note'; readonly atMs: number; readonly text: string }
  | { readonly is: 'skip'; readonly atMs: number; readonly words: string };

/** No wait is followed further back than so many readings. */
const longestWait = 2000;

/** Everything that the time line of a recording shows, in the order in which it happened, spans by their beginning. */
export function marksOf(recorded: Recorded, limits: SteadyLimits | null): Mark[] {
  const at = (k: number) => recorded.atMs[recorded.keptAt[k]!]!;
  const out = new Map(fold(recorded.header, recorded.kept).takes.map(({ event, out }) => [event.seq, out]));
  const marks: Mark[] = [...walksOf(recorded), ...gapsOf(recorded)];
  let since = 0;
  recorded.kept.forEach((event, k) => {
    if (event.type === 'take') {
      const why = out.get(event.seq);
      const words = placeWords(event.place);
      marks.push({ is: 'take', atMs: at(k), seq: event.seq, words, ...(why !== undefined && { out: why }) });
      const wait = limits && settling(recorded, limits, since, recorded.keptAt[k]!);
      if (wait !== null) marks.push({ is: 'wait', fromMs: recorded.atMs[wait]!, toMs: at(k) });
      since = recorded.keptAt[k]! + 1;
    }
    if (event.type === 'note') marks.push({ is: 'note', atMs: at(k), text: event.text });
    if (event.type === 'skip') marks.push({ is: 'skip', atMs: at(k), words: placeWords(event.place) });
  });
  for (const { before, ms } of recorded.pauses) {
    marks.push({ is: 'pause', atMs: recorded.atMs[before]!, ms });
  }
  return marks.sort((a, b) => startOf(a) - startOf(b));
}

export function startOf(mark: Mark): number {
  return 'atMs' in mark ? mark.atMs : mark.fromMs;
}

/** Takes of one run behind one another. */
function walksOf({ header, kept, keptAt, atMs }: Recorded): Mark[] {
  const words = new Map(fold(header, []).plan.runs.map((run) => [run.id, run.words]));
  const walks: { run: string; fromMs: number; toMs: number }[] = [];
  let before = 0;
  kept.forEach((event, k) => {
    if (event.type !== 'take') return;
    const now = atMs[keptAt[k]!]!;
    const walk = walks.at(-1);
    if (walk?.run === event.place.run) walk.toMs = now;
    else walks.push({ run: event.place.run, fromMs: before, toMs: now });
    before = now;
  });
  return walks.map(({ run, fromMs, toMs }) => ({ is: 'walk', fromMs, toMs, words: words.get(run) ?? run }));
}

function gapsOf({ kept, keptAt, atMs }: Recorded): Mark[] {
  const gaps: Extract<Mark, { is: 'gap' }>[] = [];
  let lost: { fromMs: number; why: string } | null = null;
  const close = (toMs: number) => {
    if (lost) gaps.push({ is: 'gap', ...lost, toMs });
    lost = null;
  };
  kept.forEach((event: SessionEvent, k) => {
    if (event.type !== 'gap') return;
    const now = atMs[keptAt[k]!]!;
    if (event.is === 'lost') lost ??= { fromMs: now, why: event.why };
    else close(now);
  });
  close(atMs.at(-1) ?? 0);
  return gaps;
}

/** The first reading of the last time before a take at which the needle did not move any more. */
function settling(
  { seq, m, value }: Recorded,
  limits: SteadyLimits,
  since: number,
  take: number,
): number | null {
  let window: Window = emptyWindow;
  let from: number | null = null;
  for (let k = Math.max(since, take - longestWait); k < take; k += 1) {
    if (Number.isNaN(value[k]!)) continue;
    window = observe(window, { seq: seq[k]!, m: m[k]!, value: value[k]! }, limits);
    if (window.steadiness === 'moving') from = null;
    else from ??= k;
  }
  return from;
}
