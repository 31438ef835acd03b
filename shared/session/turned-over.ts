import type { HeightRun } from '../survey/plan.ts';
import type { TakenRun } from './taken-run.ts';

/** What of a survey can be used, now that artefacts may be turned over in part only. */
export interface TurnedOver {
  readonly taken: readonly TakenRun[];
  /** Artefacts whose own error is told apart from the metal. */
  readonly told: ReadonlySet<string>;
  /** Artefacts that were swept, and are not told apart yet. */
  readonly untold: readonly string[];
}

/** Fewer stations than this make no line. */
const fewestOfLine = 2;

/**
 * The error of a straightedge, square or bar is told apart where a station was read in both of its positions. Once
 * there are two of them, what was read in one position only is left out; until then the position of which more was
 * read stands for itself.
 */
export function turnedOver(taken: readonly TakenRun[]): TurnedOver {
  const told = new Set<string>();
  const untold: string[] = [];
  let used = taken;
  for (const name of artefactsOf(taken)) {
    const mine = taken.filter(({ run }) => artefactOf(run)?.name === name);
    const [asItStands, turned] = [false, true].map((position) =>
      mine.filter(({ run }) => artefactOf(run)!.turned === position),
    );
    const over = stationsOf(turned!);
    const both = new Set([...stationsOf(asItStands!)].filter((name) => over.has(name)));
    if (both.size >= fewestOfLine) {
      told.add(name);
      used = used.map((one) => (mine.includes(one) ? keep(one, both) : one));
    } else {
      untold.push(name);
      const fewer = countOf(turned!) > countOf(asItStands!) ? asItStands! : turned!;
      used = used.filter((one) => !fewer.includes(one));
    }
  }
  return { taken: used, told, untold };
}

/** What a run is read against, where its error is to be told apart. */
function artefactOf(run: TakenRun['run']): HeightRun['artefact'] {
  return run.reads === 'height' ? run.artefact : undefined;
}

function artefactsOf(taken: readonly TakenRun[]): Set<string> {
  return new Set(taken.flatMap(({ run }) => artefactOf(run)?.name ?? []));
}

function stationsOf(taken: readonly TakenRun[]): Set<string> {
  return new Set(taken.flatMap(({ takes }) => takes.flatMap(({ place }) => place.at)));
}

function countOf(taken: readonly TakenRun[]): number {
  return taken.reduce((sum, { takes }) => sum + takes.length, 0);
}

function keep({ run, takes }: TakenRun, stations: ReadonlySet<string>): TakenRun {
  return { run, takes: takes.filter(({ place }) => stations.has(place.at[0])) };
}
