import type { ComparedLine } from '../../shared/replay/compared.ts';
import type { Habits } from '../../shared/replay/habits.ts';
import type { Session } from '../../shared/session/fold.ts';
import { lasting } from './live.ts';
import { asWritten, dateText } from './quantity.ts';
import { say } from './say.ts';

/** A recording in few words. */
export function compareTitle({ setup, header }: Session): string {
  return [setup.round, setup.operator, dateText(header.t)].filter(Boolean).join(', ');
}

/** Whether two surveys say the same. */
export function compareSentence(lines: readonly ComparedLine[] | null): string {
  const all = lines?.flatMap(({ stations }) => stations) ?? [];
  if (all.length === 0) return say('These two cannot be compared');
  const off = all.filter(({ differs }) => differs);
  if (off.length === 0) return say('Both say the same, as sure as they are');
  const worst = off.reduce((most, each) =>
    Math.abs(each.differenceUm) > Math.abs(most.differenceUm) ? each : most,
  );
  return say('{count} of {all} stations differ, {station} most: by {size}', {
    count: off.length,
    all: all.length,
    station: worst.name,
    size: asWritten().size(worst.differenceUm, worst.uUm),
  });
}

/** How both were measured, row by row. */
export function habitRows(first: Habits, second: Habits): readonly (readonly [string, string, string])[] {
  const row = (what: string, words: (habits: Habits) => string) =>
    [what, words(first), words(second)] as const;
  const wait = (ms: number | null) => (ms === null ? say('not known') : lasting(ms));
  return [
    row(say('Time it took, breaks shortened'), ({ lengthMs }) => lasting(lengthMs)),
    row(say('Takes'), ({ takes }) => String(takes)),
    row(say('Taken back'), ({ takenBack }) => String(takenBack)),
    row(say('Read again'), ({ repeats }) => String(repeats)),
    row(say('Left out'), ({ skipped }) => String(skipped)),
    row(say('Taken before it was steady'), ({ unsteady }) => String(unsteady)),
    row(say('Wait for rest, mean'), ({ meanWaitMs }) => wait(meanWaitMs)),
    row(say('Wait for rest, longest'), ({ longestWaitMs }) => wait(longestWaitMs)),
  ];
}
