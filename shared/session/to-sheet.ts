import type { SheetInput } from '../sheet/sheet.ts';
import { facingOf, placementKey, stationsOf, walkPlacements } from '../survey/way.ts';
import type { Session } from './fold.ts';

/**
 * The sheet that a session boils down to: what counts of it, and nothing else.
 *
 * Readings stand in the order in which they were taken, because a drift runs along that order. A reading
 * is written as the instrument showed it (times the size of its graduation), with the facing beside it.
 * Stations that no reading touches are left out, so a walk that is half done has a sheet of its own.
 */
export function toSheet(session: Session): SheetInput {
  const { setup } = session;
  const { graduation, sigma, unit } = setup.level;
  const walks = session.walks.flatMap((walk) => {
    const takes = walkPlacements(setup, walk)
      .flatMap((place) => session.counted.get(placementKey(place)) ?? [])
      .sort((a, b) => a.seq - b.seq);
    if (takes.length === 0) return [];
    return {
      id: walk,
      zero: 'free',
      facing: facingOf(setup, walk),
      drift: false,
      ...(sigma !== undefined && { sigma: sigma * graduation }),
      readings: takes.map(({ place, value }): [string, string, number] => [
        place.from,
        place.to,
        value * graduation,
      ]),
    };
  });
  const touched = new Set<string>();
  for (const [from, to] of walks.flatMap(({ readings }) => readings)) touched.add(from).add(to);
  const stations = stationsOf(setup).filter(({ name }) => touched.has(name));
  return {
    sheet: 1,
    kind: 'way',
    title: `${setup.part}, ${setup.surface}, ${setup.round}`,
    units: { length: 'mm', tilt: unit, height: 'um' },
    stations: Object.fromEntries(stations.map(({ name, xMm }) => [name, [xMm, 0] as [number, number]])),
    lines: { [lineName(session)]: stations.map(({ name }) => name) },
    walks,
    ...(setup.limitUm !== undefined && {
      limits: [{ figure: `${lineName(session)}.straightness`, max: setup.limitUm }],
    }),
  };
}

/** The name under which the way stands in the sheet and in the result. */
export function lineName(session: Session): string {
  return session.setup.surface;
}
