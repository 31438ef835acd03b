import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import { type Placement, placementsOf, placeWords, type Run } from '../survey/plan.ts';
import { type CountedReading, readingsOf } from './reading.ts';

/** One place that was read on the way out and on the way back. */
export interface Pair {
  readonly out: Placement;
  readonly back: Placement;
  /** What each says of the metal, its facing or sense taken out, µm/m or µm; but for its zero. */
  readonly outValue: number;
  readonly backValue: number;
  /** How many takes of the two runs lay before it. */
  readonly outTurn: number;
  readonly backTurn: number;
}

/** A line that was gone over out and back, against nothing that was turned over between. */
export interface PairedLine {
  readonly line: string;
  readonly out: Run;
  readonly back: Run;
  /** Facing or sense alike. */
  readonly alike: boolean;
  /** In the order of the way out. */
  readonly pairs: readonly Pair[];
}

export function pairedLines(session: Session, result: Result | null): PairedLine[] {
  // Where the level was turned in the middle, the two walks are no pair any more.
  const turned = new Set(
    session.takes.flatMap(({ event }) => (session.turnedTakes.has(event.seq) ? [event.place.run] : [])),
  );
  const runs = readingsOf(session, result).filter(
    ({ run }) => (run.reads === 'tilt' || !run.artefact) && !turned.has(run.id),
  );
  return runs.flatMap((out, k) => {
    const back = runs
      .slice(k + 1)
      .find(({ run }) => run.line === out.run.line && run.reads === out.run.reads);
    if (!back) return [];
    const turns = turnsOf([...out.readings, ...back.readings]);
    const onWay = (of: typeof out) => new Map(of.readings.map((one) => [placeWords(one.place), one]));
    const [outs, backs] = [onWay(out), onWay(back)];
    const pairs = placementsOf(out.run).flatMap((place) => {
      const [a, b] = [outs.get(placeWords(place)), backs.get(placeWords(place))];
      if (!a || !b) return [];
      return {
        out: a.place,
        back: b.place,
        outValue: signOf(out.run) * a.value,
        backValue: signOf(back.run) * b.value,
        outTurn: turns.get(a)!,
        backTurn: turns.get(b)!,
      };
    });
    const alike = signOf(out.run) === signOf(back.run);
    return { line: out.run.line, out: out.run, back: back.run, alike, pairs };
  });
}

function signOf(run: Run): 1 | -1 {
  return run.reads === 'tilt' ? run.facing : run.sense;
}

function turnsOf(readings: readonly CountedReading[]): Map<CountedReading, number> {
  return new Map(
    [...readings].sort((a, b) => a.take.seq - b.take.seq).map((reading, turn) => [reading, turn]),
  );
}
