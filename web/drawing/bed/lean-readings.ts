import type { Lean } from '../../../shared/figures/corner-plane.ts';
import type { Session } from '../../../shared/session/fold.ts';
import { takenRuns } from '../../../shared/session/taken-runs.ts';
import { placementKey } from '../../../shared/survey/plan.ts';
import type { TiltUnit } from '../../../shared/units.ts';
import { toInternal } from '../../../shared/units.ts';

/** Standard deviation of one reading where the set-up tells none, µm/m: what the reduction takes as well. */
const assumedSigma = 1;

/**
 * How the bed leans against its first rung by the readings across alone, while the walks along the ways can't yet
 * check them. The zero of the level drops out of the difference.
 */
export function leansOfReadings(session: Session): Lean[] {
  const run = session.plan.runs.find(({ id }) => id === 'across');
  if (run?.reads !== 'tilt') return [];
  const { unit, graduation, sigma } = session.setup.instrument;
  const inner = (value: number) => toInternal('tilt', value * graduation, unit as TiltUnit);
  const uUmPerM = Math.SQRT2 * (sigma === undefined ? assumedSigma : inner(sigma));
  const xOf = new Map(session.plan.stations.map(({ name, xMm }) => [name, xMm]));
  const taken = takenRuns(session).find((one) => one.run.id === run.id)?.takes ?? [];
  const read = run.feet.flatMap((at) => {
    const take = taken.find(({ place }) => placementKey(place) === placementKey({ run: run.id, at }));
    return take ? [{ at, slopeUmPerM: run.facing * inner(take.value) }] : [];
  });
  const first = read[0]?.slopeUmPerM ?? 0;
  return read.map(({ at: [from, to], slopeUmPerM }, k) => ({
    from,
    to,
    xMm: xOf.get(from)!,
    slopeUmPerM: slopeUmPerM - first,
    uUmPerM: k === 0 ? 0 : uUmPerM,
  }));
}
