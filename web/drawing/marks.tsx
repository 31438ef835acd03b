import type { Session } from '../../shared/session/fold.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import type { DrawnPlace } from './instrument.tsx';

interface MarksProps {
  readonly session: Session;
  /** The one reading that disagrees with the others. */
  readonly suspect: Placement | null;
  readonly pxOf: ReadonlyMap<string, number>;
  readonly yPx: number;
}

/** What became of single places: skipped ones are crossed, the suspect one carries a triangle. */
export function Marks({ session, pxOf, suspect, yPx }: MarksProps) {
  const name = ({ at }: Placement) => at.join('–');
  const read = new Set([...session.counted.values()].map(({ place }) => name(place)));
  const here = ({ at }: Placement) => at.every((station) => pxOf.has(station));
  const unread = [...session.skipped.values()].filter(({ place }) => here(place) && !read.has(name(place)));
  const middleOf = ({ at }: Placement) =>
    at.reduce((sum, station) => sum + (pxOf.get(station) ?? 0), 0) / at.length;
  return (
    <g>
      {unread.map(({ seq, place }) => (
        <path key={seq} class="skipped" d={`M${middleOf(place) - 6} ${yPx - 6}l12 12m0 -12l-12 12`}>
          <title>{`${name(place)} skipped`}</title>
        </path>
      ))}
      {suspect && (
        <path class="triangle" d={`M${middleOf(suspect)} ${yPx - 10}l11 19h-22z`}>
          <title>{`${name(suspect)} disagrees`}</title>
        </path>
      )}
    </g>
  );
}

/** A frame round the place that the person points at. */
export function PickedPlace({ px, surfacePx, metalPx }: DrawnPlace & { readonly metalPx: number }) {
  const [fromPx, toPx] = [Math.min(...px), Math.max(...px)];
  const width = Math.max(px.length === 1 ? 22 : 8, toPx - fromPx);
  return (
    <rect
      class="picked"
      x={(fromPx + toPx - width) / 2}
      y={surfacePx - 6}
      width={width}
      height={metalPx + 12}
    />
  );
}
