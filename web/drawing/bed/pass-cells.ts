import type { Result } from '../../../shared/sheet/result.ts';

/** What is to be done at one station. */
export interface PassCell {
  readonly name: string;
  readonly xMm: number;
  readonly passes: number;
  /** Less than its own uncertainty: it may be nothing. */
  readonly hatched: boolean;
  readonly words: string;
  readonly short: string;
}

/** The stations that metal was reckoned for, in their order. */
export function passCells(
  stations: readonly { readonly name: string; readonly xMm: number }[],
  removals: Result['metal'][string]['stations'],
): PassCell[] {
  return stations.flatMap(({ name, xMm }) => {
    const removal = removals[name];
    if (!removal) return [];
    const { passes, worthAStroke } = removal;
    const hatched = passes > 0 && !worthAStroke;
    const leave = passes === 0 || hatched;
    return [
      {
        name,
        xMm,
        passes,
        hatched,
        words: leave ? 'leave' : passes === 1 ? '1 pass' : `${passes} passes`,
        short: leave ? '0' : String(passes),
      },
    ];
  });
}
