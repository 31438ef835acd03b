import type { Session } from '../../shared/session/fold.ts';
import { type HeightRun, placementKey } from '../../shared/survey/plan.ts';
import { sagUm } from '../../shared/survey/sag.ts';
import { toInternal } from '../../shared/units.ts';
import { stationsAlong } from './on-plan.ts';

/** One sweep as it stands on paper: what was read, and what is left when its own set-up is taken off, µm. */
export interface SweepColumn {
  readonly run: HeightRun;
  readonly readUm: ReadonlyMap<string, number>;
  readonly heightUm: ReadonlyMap<string, number>;
}

/** The arithmetic of the sweeps over one line, station by station; µm, plus = metal stands high. */
export interface SweepColumns {
  readonly columns: readonly SweepColumn[];
  readonly meanUm: ReadonlyMap<string, number>;
  /** Own error of what was turned over; null where nothing was turned. */
  readonly artefactUm: ReadonlyMap<string, number> | null;
  /** How far a bar hangs down, put back on every reading; null where nothing hangs. */
  readonly sagUm: ReadonlyMap<string, number> | null;
}

/**
 * Readings as heights, the sag of a bar put back, less the set-up of each sweep: the mean of it, or the line through its ends where it was
 * set up by eye. Of what was turned over, half the sum of the two positions is the metal and half their difference
 * the thing's own error. Only stations that every sweep has read count, so that sweeps can be compared.
 */
export function sweepColumns(session: Session, line: string): SweepColumns {
  const { graduation, unit } = session.setup.instrument;
  const along = stationsAlong(session, line);
  const runs = session.plan.runs.filter(
    (run): run is HeightRun => run.reads === 'height' && run.line === line,
  );
  const read = runs
    .map((run) => {
      const readUm = new Map(
        along.flatMap(({ name }) => {
          const take = session.counted.get(placementKey({ run: run.id, at: [name] }));
          return take ? [[name, toInternal('height', take.value * graduation, unit)] as const] : [];
        }),
      );
      return { run, readUm };
    })
    .filter(({ readUm }) => readUm.size > 0);
  const common = along.filter(({ name }) => read.every(({ readUm }) => readUm.has(name)));
  const sag = sagsOf(session, line);
  const columns = read.map(({ run, readUm }) => ({
    run,
    readUm,
    heightUm: lessSetUp(run, readUm, sag, common),
  }));
  const position = (turned: boolean) =>
    meanOf(
      columns.filter(({ run }) => (run.artefact?.turned ?? false) === turned),
      common,
    );
  const [stands, turned] = [position(false), position(true)];
  const both = stands.size > 0 && turned.size > 0;
  const pairs = (of: (a: number, b: number) => number) =>
    new Map(common.map(({ name }) => [name, of(stands.get(name) ?? 0, turned.get(name) ?? 0)]));
  return {
    columns,
    meanUm: both ? pairs((a, b) => (a + b) / 2) : stands.size > 0 ? stands : turned,
    sagUm: sag,
    artefactUm: both ? pairs((a, b) => (a - b) / 2) : null,
  };
}

type Along = readonly { readonly name: string; readonly xMm: number }[];

function sagsOf({ setup, plan }: Session, line: string): ReadonlyMap<string, number> | null {
  if (setup.kind !== 'bar' || line !== 'top' || setup.sagUm === 0) return null;
  return new Map(plan.stations.map(({ name, xMm }) => [name, sagUm(setup, xMm)]));
}

function lessSetUp(
  run: HeightRun,
  readUm: ReadonlyMap<string, number>,
  sag: ReadonlyMap<string, number> | null,
  common: Along,
) {
  const heightOf = (name: string) => run.sense * (readUm.get(name) ?? 0) + (sag?.get(name) ?? 0);
  const [first, last] = [common[0], common.at(-1)];
  if (!first || !last) return new Map<string, number>();
  const mean = common.reduce((sum, { name }) => sum + heightOf(name), 0) / common.length;
  const [from, to] = [heightOf(first.name), heightOf(last.name)];
  const endLine = (x: number) => from + ((to - from) * (x - first.xMm)) / (last.xMm - first.xMm || 1);
  return new Map(
    common.map(({ name, xMm }) => [name, heightOf(name) - (run.slope === 'free' ? endLine(xMm) : mean)]),
  );
}

function meanOf(columns: readonly SweepColumn[], common: Along): Map<string, number> {
  if (columns.length === 0) return new Map();
  return new Map(
    common.map(({ name }) => [
      name,
      columns.reduce((sum, { heightUm }) => sum + (heightUm.get(name) ?? 0), 0) / columns.length,
    ]),
  );
}
