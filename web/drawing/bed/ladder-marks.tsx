import { type Placement, placeWords } from '../../../shared/survey/plan.ts';
import { type BedSession, feetOf, levelPx } from './ladder-rows.ts';

type Place = Parameters<typeof feetOf>[1];

function middleOf(place: Placement, point: Place) {
  const [from, to] = feetOf(place, point);
  return { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
}

export function Suspect({ place, point }: { place: Placement; point: Place }) {
  const { x, y } = middleOf(place, point);
  return (
    <path class="triangle" d={`M${x} ${y - 10}l11 19h-22z`}>
      <title>{`${placeWords(place)} disagrees`}</title>
    </path>
  );
}

export function Skipped({ session, point }: { session: BedSession; point: Place }) {
  return (
    <g>
      {[...session.skipped.values()].map(({ seq, place }) => {
        const { x, y } = middleOf(place, point);
        return (
          <path key={seq} class="skipped" d={`M${x - 6} ${y - 6}l12 12m0 -12l-12 12`}>
            <title>{`${placeWords(place)} skipped`}</title>
          </path>
        );
      })}
    </g>
  );
}

/** A frame round the placement that the person points at. */
export function Picked({ place, point }: { place: Placement; point: Place }) {
  const [from, to] = feetOf(place, point);
  const [halfX, halfY] = [
    Math.max(Math.abs(to.x - from.x) / 2, 10),
    Math.abs(to.y - from.y) / 2 + levelPx / 2 + 4,
  ];
  const { x, y } = middleOf(place, point);
  return <rect class="picked" x={x - halfX} y={y - halfY} width={2 * halfX} height={2 * halfY} />;
}
