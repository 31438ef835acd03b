import type { Session } from '../session/fold.ts';
import { takenRuns } from '../session/taken-runs.ts';
import { turnedOver } from '../session/turned-over.ts';
import type { Result } from '../sheet/result.ts';
import { placementKey, placeWords } from '../survey/plan.ts';
import type { Notice } from './notice.ts';

/** Stations that were read but hang on nothing that joins them to the rest, once nothing is left to do that would. */
export function untied(session: Session, result: Result | null): Notice[] {
  if (!result || hasOpen(session)) return [];
  const known = new Set(Object.keys(result.stations));
  const loose = new Set(
    [...session.counted.values()].flatMap(({ place }) => place.at).filter((name) => !known.has(name)),
  );
  if (loose.size === 0) return [];
  const bridge = session.placements.find(
    (place) =>
      session.skipped.has(placementKey(place)) &&
      place.at.some((name) => loose.has(name)) !== place.at.every((name) => loose.has(name)),
  );
  const names = [...loose].slice(0, 4).join(', ') + (loose.size > 4 ? ' …' : '');
  const cure = bridge
    ? `Nobody has read ${placeWords(bridge)}: read it, or a place that joins them.`
    : 'Read a place that joins them.';
  return [
    {
      code: 'untied',
      text: `${names} can't be tied to the rest and ${loose.size === 1 ? 'is' : 'are'} left out. ${cure}`,
      ...(bridge && { place: bridge }),
      warns: true,
    },
  ];
}

/** A straightedge, square or bar whose own error is still in the figures although nothing is left to do. */
export function notTurned(session: Session): Notice[] {
  if (hasOpen(session)) return [];
  return turnedOver(takenRuns(session)).untold.map((name) => ({
    code: 'not-turned',
    text: `The ${name} was read in one position only: its own error is in these figures. Turn it and sweep again.`,
    warns: true,
  }));
}

function hasOpen({ placements, counted, skipped }: Session): boolean {
  return placements.some((place) => {
    const key = placementKey(place);
    return !counted.has(key) && !skipped.has(key);
  });
}
