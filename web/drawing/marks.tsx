import type { Session } from '../../shared/session/fold.ts';
import type { Placement } from '../../shared/survey/way.ts';

interface MarksProps {
  readonly session: Session;
  /** The one reading that disagrees with the others. */
  readonly suspect: Placement | null;
  readonly pxOf: ReadonlyMap<string, number>;
  readonly yPx: number;
}

/** What became of single steps: skipped ones are crossed, the suspect one carries a triangle. */
export function Marks({ session, pxOf, suspect, yPx }: MarksProps) {
  const read = new Set([...session.counted.values()].map(({ place }) => place.from));
  const unread = [...session.skipped.values()].filter(({ place }) => !read.has(place.from));
  const middleOf = ({ from, to }: Placement) => ((pxOf.get(from) ?? 0) + (pxOf.get(to) ?? 0)) / 2;
  return (
    <g>
      {unread.map(({ seq, place }) => (
        <path key={seq} class="skipped" d={`M${middleOf(place) - 6} ${yPx - 6}l12 12m0 -12l-12 12`}>
          <title>{`${place.from}–${place.to} skipped`}</title>
        </path>
      ))}
      {suspect && (
        <path class="triangle" d={`M${middleOf(suspect)} ${yPx - 10}l11 19h-22z`}>
          <title>{`${suspect.from}–${suspect.to} disagrees`}</title>
        </path>
      )}
    </g>
  );
}

interface PickedPlaceProps {
  readonly fromPx: number;
  readonly toPx: number;
  readonly surfacePx: number;
  readonly metalPx: number;
}

/** A frame round the step that the person points at. */
export function PickedPlace({ fromPx, toPx, surfacePx, metalPx }: PickedPlaceProps) {
  const px = Math.max(8, toPx - fromPx);
  return (
    <rect class="picked" x={(fromPx + toPx - px) / 2} y={surfacePx - 6} width={px} height={metalPx + 12} />
  );
}
