import type { Closure } from '../../../shared/figures/closures.ts';
import { type Placement, placeWords } from '../../../shared/survey/plan.ts';
import { asWritten } from '../../words/quantity.ts';
import { textWidth } from '../text-width.ts';
import { labelPx, type PlacedLabel } from './keep-apart.ts';
import { labelAt, type PlanView, type Point } from './plan-view.ts';
import { namedStations } from './plate-names.ts';
import type { PlateSession } from './plate-session.ts';

/** Half way between the feet of a placement. */
export function middleOf({ at }: Placement, pointOf: (name: string) => Point): Point {
  const [a, b] = [pointOf(at[0]), pointOf(at[1] ?? at[0])];
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** The two feet to be set next, beside the level and inside the plate. */
export function nextLabel(
  view: PlanView,
  place: Placement | null,
  pointOf: (name: string) => Point,
): PlacedLabel[] {
  if (!place) return [];
  const text = placeWords(place);
  const { x, y } = middleOf(place, pointOf);
  const [a, b] = [pointOf(place.at[0]), pointOf(place.at[1] ?? place.at[0])];
  const half = textWidth(text, labelPx, true) / 2;
  const { plate } = view;
  const steep = Math.abs(b.y - a.y) > Math.abs(b.x - a.x);
  const inside = x < plate.x + plate.width / 2 ? 1 : -1;
  const reach = 22 + half + Math.abs(b.x - a.x) / 2;
  const beside = steep ? { x: x + inside * reach, y: y + 4 } : { x, y: 0 };
  const up = Math.abs(b.y - a.y) / 2 + 20;
  const below = y < plate.y + plate.height / 2;
  return [
    {
      text,
      kind: 'live',
      anchor: 'middle',
      x: Math.min(Math.max(beside.x, plate.x + half + 4), plate.x + plate.width - half - 4),
      y: steep ? beside.y : below ? y + up + 10 : y - up,
    },
  ];
}

/** The stations that have names of their own, each with how it closes. */
export function nameLabels(
  view: PlanView,
  session: PlateSession,
  closures: readonly Closure[],
  pointOf: (name: string) => Point,
): PlacedLabel[] {
  const closed = new Map(closures.map((closure) => [closure.station, closure]));
  const roomy = view.plate.width >= 460;
  return namedStations(session, closures).map(({ name, words }) => {
    const closure = closed.get(name);
    const text = [
      roomy && words ? `${name}, ${words}` : name,
      closure && asWritten().size(closure.closureUm, closure.uUm),
    ]
      .filter(Boolean)
      .join('  ');
    return { ...labelAt(view, pointOf(name), text), kind: 'name' };
  });
}
