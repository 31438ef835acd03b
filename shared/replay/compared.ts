import { WayscribeError } from '../errors.ts';
import type { Session } from '../session/fold.ts';
import { resultOf } from '../session/result.ts';

/** One station as two surveys found it, each over the line through its ends. */
export interface ComparedStation {
  readonly name: string;
  readonly xMm: number;
  readonly firstUm: number;
  readonly secondUm: number;
  /** Second less first, and its standard uncertainty. */
  readonly differenceUm: number;
  readonly uUm: number;
  /** The difference is more than twice its uncertainty: one of the two is wrong, or the metal has changed. */
  readonly differs: boolean;
}

export interface ComparedLine {
  readonly line: string;
  readonly stations: readonly ComparedStation[];
}

/**
 * Two surveys of the same part on one scale, line by line.
 * @throws WayscribeError `command.refused` when they are not of the same stations, or of the adjustment
 */
export function compared(first: Session, second: Session): ComparedLine[] {
  const [a, b] = [resultOf(first, 'ends'), resultOf(second, 'ends')];
  const where = new Map(first.plan.stations.map(({ name, xMm }) => [name, xMm]));
  const whereB = new Map(second.plan.stations.map(({ name, xMm }) => [name, xMm]));
  const lines = Object.entries(a.lines).flatMap(([line, { stations }]): ComparedLine[] => {
    const other = b.lines[line]?.stations;
    if (!other || first.setup.kind !== second.setup.kind) return [];
    const common = Object.entries(stations).flatMap(([name, height]): ComparedStation[] => {
      const found = other[name];
      if (!found || where.get(name) !== whereB.get(name)) return [];
      const differenceUm = found.heightUm - height.heightUm;
      const uUm = Math.hypot(found.uUm, height.uUm);
      return [
        {
          name,
          xMm: where.get(name) ?? 0,
          firstUm: height.heightUm,
          secondUm: found.heightUm,
          differenceUm,
          uUm,
          differs: Math.abs(differenceUm) > 2 * uUm + 1e-9,
        },
      ];
    });
    return common.length > 1 ? [{ line, stations: common }] : [];
  });
  if (lines.length > 0) return lines;
  throw new WayscribeError(
    'command.refused',
    second.header.id,
    'has no stations in common with this recording',
    'choose a recording of the same part, with the same stations',
  );
}
