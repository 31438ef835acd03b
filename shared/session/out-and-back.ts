import { isTiltRun, type TakenRun, type TakenTilt } from './taken-run.ts';

/** A line that a level was walked along more than once, with what counts of each walk. */
export interface OutAndBack {
  readonly line: string;
  readonly out: TakenTilt;
  readonly back: TakenTilt;
}

/** Every line that was walked twice. */
export function outAndBacks(taken: readonly TakenRun[]): OutAndBack[] {
  const walks = taken.filter(isTiltRun);
  return walks.flatMap((out, k) => {
    const back = walks.slice(k + 1).find(({ run }) => run.line === out.run.line);
    return back ? [{ line: out.run.line, out, back }] : [];
  });
}

/**
 * Whether a steady drift of the level can be told from a bow of the way: a level that was turned for the walk back shows
 * both alike, one that was not shows them apart.
 */
export function tellsDrift({ out, back }: OutAndBack): boolean {
  return out.run.facing === back.run.facing;
}

/** Name of the walk out and the walk back over a line as one. */
export function joinedId(line: string): string {
  return `${line} out and back`;
}

/** The two walks as one, over which a drift runs on without a break. */
export function asOneWalk({ line, out, back }: OutAndBack): TakenTilt {
  return {
    run: { ...out.run, id: joinedId(line) },
    takes: [...out.takes, ...back.takes].sort((a, b) => a.seq - b.seq),
  };
}
