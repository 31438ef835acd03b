import { type Closure, type ClosureLine, closuresOf } from '../../../shared/figures/closures.ts';
import type { Result } from '../../../shared/sheet/result.ts';
import { placementKey, type TiltRun } from '../../../shared/survey/plan.ts';
import { type TiltUnit, toInternal } from '../../../shared/units.ts';
import { asWritten } from '../../words/quantity.ts';
import type { PlateSession } from './plate-session.ts';

/** The closures of a plate so far: of the lines that are walked whole. */
export function plateClosures(session: PlateSession, result: Result | null): Closure[] {
  if (!result) return [];
  const lines = Object.entries(session.plan.lines).flatMap(([name, stations]) => {
    const line = closureLine(session, result, name, stations);
    return line ? [line] : [];
  });
  return closuresOf(lines, session.setup.zero);
}

function closureLine(
  session: PlateSession,
  result: Result,
  name: string,
  stations: readonly string[],
): ClosureLine | null {
  const runs = session.plan.runs.filter((run): run is TiltRun => run.line === name && run.reads === 'tilt');
  const residuals = new Map(
    result.readings.flatMap((reading) =>
      'walk' in reading
        ? [[placementKey({ run: reading.walk, at: [reading.from, reading.to] }), reading.residual] as const]
        : [],
    ),
  );
  const place = new Map(session.plan.stations.map((station) => [station.name, station]));
  const lengthMm = (from: string, to: string) => {
    const [a, b] = [place.get(from)!, place.get(to)!];
    return Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
  };
  const excessUm: number[] = [];
  let fewest = Number.POSITIVE_INFINITY;
  for (const [k, to] of stations.slice(1).entries()) {
    const from = stations[k]!;
    const excess = runs.flatMap((run) => {
      const residual = residuals.get(placementKey({ run: run.id, at: [from, to] }));
      return residual === undefined ? [] : [(-run.facing * residual * lengthMm(from, to)) / 1000];
    });
    if (excess.length === 0) return null;
    fewest = Math.min(fewest, excess.length);
    excessUm.push(excess.reduce((sum, each) => sum + each, 0) / excess.length);
  }
  const stepMm = lengthMm(stations[0]!, stations[1]!);
  return {
    name,
    stations,
    excessUm,
    stepUUm: (sigmaUmPerM(session, result) * stepMm) / 1000 / Math.sqrt(fewest),
  };
}

/** Standard deviation of one reading: as proved, or as the reduction assumed it and scaled it by the scatter. */
function sigmaUmPerM({ setup }: PlateSession, { fit }: Result): number {
  const { sigma, graduation, unit } = setup.instrument;
  const proved = sigma === undefined ? 1 : toInternal('tilt', sigma * graduation, unit as TiltUnit);
  return proved * (fit.sigmaScaled ? (fit.s0 ?? 1) : 1);
}

/** "0.2 µm, as good as the level", or only "0.9 µm" where it is more than the level's scatter can make. */
export function closureWords({ closureUm, uUm }: Closure): string {
  const size = asWritten().size(closureUm, uUm);
  return closureUm <= 2 * uUm ? `${size}, as good as the level` : `${size}, more than the level scatters`;
}

/** The crossing that closes worst. */
export function worstOf(closures: readonly Closure[]): Closure | null {
  return closures.reduce<Closure | null>(
    (worst, closure) => (worst && worst.closureUm >= closure.closureUm ? worst : closure),
    null,
  );
}
