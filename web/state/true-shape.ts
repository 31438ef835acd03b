import { reduce } from '../../shared/reduce.ts';
import type { Session } from '../../shared/session/fold.ts';
import { validateSheet } from '../../shared/sheet/sheet.ts';
import { kindWords } from '../words/kinds.ts';
import type { Reference } from './page-state.ts';
import type { LineResult, ReducedStation, SurveyResult } from './survey-result.ts';

/**
 * The true shape of a simulated part at the stations that were measured, line by line, against the same
 * reference. It goes through the same reduction as the survey: as a walk without any error.
 */
export function trueShape(session: Session, survey: SurveyResult, reference: Reference): ReducedStation[][] {
  const truth = session.header.simulated?.truthUm;
  if (!truth) return [];
  const { overMotion } = kindWords[session.setup.kind];
  return survey.lines.map((line) => {
    const stations = line.stations.filter(({ name }) => truth[name] !== undefined);
    const heights = stations.map((station) => ({ ...station, heightUm: truth[station.name] ?? 0, uUm: 0 }));
    if (stations.length < 2) return [];
    return overMotion ? overTheirMean(heights) : overReference({ ...line, stations: heights }, reference);
  });
}

function overTheirMean(stations: readonly ReducedStation[]): ReducedStation[] {
  const mean = stations.reduce((sum, { heightUm }) => sum + heightUm, 0) / stations.length;
  return stations.map((station) => ({ ...station, heightUm: station.heightUm - mean }));
}

function overReference({ stations }: LineResult, reference: Reference): ReducedStation[] {
  const readings = stations.slice(1).map((to, k) => {
    const from = stations[k] ?? to;
    return [from.name, to.name, (1000 * (to.heightUm - from.heightUm)) / (to.xMm - from.xMm)];
  });
  const sheet = validateSheet({
    sheet: 1,
    kind: 'way',
    stations: Object.fromEntries(stations.map(({ name, xMm }) => [name, [xMm, 0]])),
    lines: { truth: stations.map(({ name }) => name) },
    walks: [{ id: 'truth', zero: 'known', sigma: 1e-6, readings }],
    gravityCurvature: 'off',
  });
  const line = reduce(sheet, { reference }).lines.truth;
  return stations.flatMap((station) => {
    const height = line?.stations[station.name];
    return height ? [{ ...station, ...height }] : [];
  });
}
