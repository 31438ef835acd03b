import type { Session } from './fold.ts';
import { isTiltRun, type TakenRun } from './taken-run.ts';

/** Walks on which the level was turned end for end before they were done. */

/** Name of the part of a walk that was read with the level turned. */
export function turnedId(run: string): string {
  return `${run}, level turned`;
}

/** Whether any reading of it was taken with the level facing the other way than planned. */
export function isTurnedIn({ takes }: TakenRun, { turnedTakes }: Session): boolean {
  return takes.some(({ seq }) => turnedTakes.has(seq));
}

/**
 * Each walk in which the level was turned as the one or two walks that it really was: the turned part faces the other
 * way. The level keeps its zero when it is turned, so both parts share it.
 */
export function inSegments(taken: readonly TakenRun[], session: Session): TakenRun[] {
  return taken.flatMap((one) => {
    if (!isTiltRun(one) || !isTurnedIn(one, session)) return one;
    const { run, takes } = one;
    const zero = run.zero === 'free' ? `zero of ${run.id}` : run.zero;
    const facing = run.facing === 1 ? -1 : 1;
    const parts: TakenRun[] = [
      { run: { ...run, zero }, takes: takes.filter(({ seq }) => !session.turnedTakes.has(seq)) },
      {
        run: { ...run, zero, facing, id: turnedId(run.id) },
        takes: takes.filter(({ seq }) => session.turnedTakes.has(seq)),
      },
    ];
    return parts.filter(({ takes }) => takes.length > 0);
  });
}

/** Of a walk in which the level was turned, the takes of the facing that read more of it. */
export function longerSegment({ run, takes }: TakenRun, { turnedTakes }: Session): TakenRun {
  const turned = takes.filter(({ seq }) => turnedTakes.has(seq));
  const straight = takes.filter(({ seq }) => !turnedTakes.has(seq));
  return { run, takes: turned.length > straight.length ? turned : straight };
}
