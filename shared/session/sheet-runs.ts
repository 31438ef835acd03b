import type { SheetInput } from '../sheet/sheet.ts';
import type { HeightRun, TiltRun } from '../survey/plan.ts';
import { sagUm } from '../survey/sag.ts';
import { type HeightUnit, type TiltUnit, tiltUnits, unitFactor } from '../units.ts';
import type { TakeEvent } from './events.ts';
import type { Session } from './fold.ts';
import { asOneWalk, outAndBacks, tellsDrift } from './out-and-back.ts';
import type { Setup } from './setup.ts';
import type { TakenRun } from './taken-run.ts';
import { isTurnedIn } from './turned-level.ts';

/** The walks and sweeps of a sheet, from the runs of a session. */

/** What one of the readings is: in the unit of the set-up where sigma is known, else in µm/m or µm. */
export function countsOf({ instrument }: Setup): { unit: TiltUnit | HeightUnit; factor: number } {
  const { unit, graduation, sigma } = instrument;
  if (sigma !== undefined) return { unit, factor: graduation };
  return isTilt(unit)
    ? { unit: 'um/m', factor: graduation * unitFactor('tilt', unit) }
    : { unit: 'um', factor: graduation * unitFactor('height', unit) };
}

export function isTilt(unit: TiltUnit | HeightUnit): unit is TiltUnit {
  return (tiltUnits as readonly string[]).includes(unit);
}

type Walk = NonNullable<SheetInput['walks']>[number];
type Sweep = NonNullable<SheetInput['sweeps']>[number];

export function walkOf(
  run: TiltRun,
  takes: readonly TakeEvent[],
  factor: number,
  sigma: number | undefined,
): Walk {
  return {
    id: run.id,
    zero: run.zero,
    facing: run.facing,
    ...(sigma !== undefined && { sigma: sigma * factor }),
    readings: takes.map(({ place, value }) => [place.at[0], place.at[1]!, value * factor]),
  };
}

/** Walks in which a steady drift is an unknown of its own; every other run stays as it is. */
export function withDrift(
  taken: readonly TakenRun[],
  session: Session,
): {
  runs: readonly TakenRun[];
  drifting: ReadonlySet<string>;
} {
  const pairs = outAndBacks(taken.filter((one) => !isTurnedIn(one, session))).filter(tellsDrift);
  const joined = pairs.map(asOneWalk);
  const parts = new Set<TakenRun>(pairs.flatMap(({ out, back }) => [out, back]));
  return {
    runs: [...taken.filter((one) => !parts.has(one)), ...joined],
    drifting: new Set(joined.map(({ run }) => run.id)),
  };
}

export function sweepOf(
  run: HeightRun,
  takes: readonly TakeEvent[],
  factor: number,
  sigma: number | undefined,
  { told, sag }: { told: ReadonlySet<string>; sag: (run: HeightRun, station: string) => number },
): Sweep {
  const { artefact } = run;
  return {
    id: run.id,
    offset: run.offset,
    slope: run.slope,
    sense: run.sense,
    ...(sigma !== undefined && { sigma: sigma * factor }),
    ...(artefact && told.has(artefact.name) && { artefact: artefact.name, turned: artefact.turned }),
    readings: run.tips.flatMap((tip) =>
      takes
        .filter(({ place }) => place.at[0] === tip)
        .map(({ value }): [string, number] => [tip, value * factor + run.sense * sag(run, tip)]),
    ),
  };
}

/** How far the bar hangs down at a station of its top plane, in the unit of the sheet. */
export function sagOf({ setup, plan }: Session, unit: TiltUnit | HeightUnit) {
  const xMm = new Map(plan.stations.map((station) => [station.name, station.xMm]));
  return ({ line }: HeightRun, station: string): number =>
    setup.kind === 'bar' && line === 'top' ? sagUm(setup, xMm.get(station)!) / unitFactor('height', unit) : 0;
}
