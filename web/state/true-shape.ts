import { reduce } from '../../shared/reduce.ts';
import type { Session } from '../../shared/session/fold.ts';
import { validateSheet } from '../../shared/sheet/sheet.ts';
import type { Reference } from './page-state.ts';
import type { ReducedStation, SurveyResult } from './survey-result.ts';

/**
 * The true shape of a simulated part at the stations that were measured, against the same reference.
 * It goes through the same reduction as the survey: as a walk without any error.
 */
export function trueShape(session: Session, survey: SurveyResult, reference: Reference): ReducedStation[] {
  const truth = session.header.simulated?.truthUm;
  if (!truth) return [];
  const stations = survey.stations.filter(({ name }) => truth[name] !== undefined);
  const names = stations.map(({ name }) => name);
  if (names.length < 2) return [];
  const readings = stations.slice(1).map((to, k) => {
    const from = stations[k] ?? to;
    const riseUm = (truth[to.name] ?? 0) - (truth[from.name] ?? 0);
    return [from.name, to.name, (1000 * riseUm) / (to.xMm - from.xMm)];
  });
  const sheet = validateSheet({
    sheet: 1,
    kind: 'way',
    stations: Object.fromEntries(stations.map(({ name, xMm }) => [name, [xMm, 0]])),
    lines: { truth: names },
    walks: [{ id: 'truth', zero: 'known', sigma: 1e-6, readings }],
    gravityCurvature: 'off',
  });
  const line = reduce(sheet, { reference }).lines.truth;
  return stations.flatMap((station) => {
    const height = line?.stations[station.name];
    return height ? [{ ...station, ...height }] : [];
  });
}
