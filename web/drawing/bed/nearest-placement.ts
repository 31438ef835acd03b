import type { Session } from '../../../shared/session/fold.ts';
import { type Placement, placementKey } from '../../../shared/survey/plan.ts';

interface Point {
  readonly x: number;
  readonly y: number;
}

/** Further from every placement than this, a tap means none of them, px. */
const reachPx = 44;

/**
 * The placement whose middle a person taps. Where several runs pass the same feet, it is the one that is read now, else one that
 * has been read: that is what one wants to read again.
 */
export function nearestPlacement(
  session: Session,
  pointOf: (name: string) => Point,
  tap: Point,
): Placement | null {
  const rank = (place: Placement) =>
    place.run === session.next?.run ? 0 : session.counted.has(placementKey(place)) ? 1 : 2;
  const near = session.placements.flatMap((place) => {
    const [from, to] = [pointOf(place.at[0]), pointOf(place.at[1] ?? place.at[0])];
    const px = Math.hypot((from.x + to.x) / 2 - tap.x, (from.y + to.y) / 2 - tap.y);
    return px <= reachPx ? [{ place, px, rank: rank(place) }] : [];
  });
  near.sort((a, b) => (Math.abs(a.px - b.px) > 0.5 ? a.px - b.px : a.rank - b.rank));
  return near[0]?.place ?? null;
}
