import type { Session } from '../../shared/session/fold.ts';
import { facingOf, type Placement, placementKey, stationsOf } from '../../shared/survey/way.ts';
import { lengthText } from '../words/length.ts';
import type { Across } from './across.ts';
import { Dimension } from './dimension.tsx';
import { Level, NextFeet } from './level.tsx';
import { Metal } from './metal.tsx';
import { Stations } from './stations.tsx';
import { fitText, textWidth } from './text-width.ts';

export interface WayProps {
  readonly across: Across;
  readonly session: Session;
  /** Where the level is drawn; null when it is off the metal (result). */
  readonly standsOn: Placement | null;
  readonly lifted: boolean;
  /** Nothing is heard of the level now. */
  readonly stale?: boolean;
  /** The place that the person points at, to read it again. */
  readonly picked: Placement | null;
  /** The one reading that disagrees with the others. */
  readonly suspect: Placement | null;
  onPick?(from: string, to: string): void;
}

/** Heights of the rows of the drawing, px from its top. Without a level the metal moves up. */
const withLevelPx = 76;
const withoutLevelPx = 24;
const metalPx = 28;
const belowPx = { label: metalPx + 24, step: metalPx + 44, total: metalPx + 62, end: metalPx + 69 };

/** The way to scale: its ends, its stations, the level on them, and its dimensions. */
export function Way({ across, session, standsOn, lifted, stale = false, picked, suspect, onPick }: WayProps) {
  const surfacePx = session.ended ? withoutLevelPx : withLevelPx;
  const heightPx = surfacePx + belowPx.end;
  const { setup, next } = session;
  const stations = stationsOf(setup);
  const pxOf = new Map(stations.map(({ name, xMm }) => [name, across.px(xMm)]));
  const feet = (place: Placement) => ({
    fromPx: pxOf.get(place.from) ?? 0,
    toPx: pxOf.get(place.to) ?? 0,
    surfacePx,
  });
  const ghost = next && standsOn && placementKey(next) !== placementKey(standsOn);
  const stepAt = (px: number) => {
    const k = stations.findIndex(({ xMm }) => across.px(xMm) > px);
    const [from, to] = [stations[k - 1]?.name, stations[k]?.name];
    return from !== undefined && to !== undefined ? ([from, to] as const) : null;
  };
  const last = stations.at(-1)?.xMm ?? 0;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keyboard's way to the same is Repeat with the arrow keys
    <svg
      width={across.widthPx}
      height={heightPx}
      viewBox={`0 0 ${across.widthPx} ${heightPx}`}
      role="img"
      class={onPick ? 'picks' : ''}
      onClick={(event) => {
        const place = onPick && stepAt(event.offsetX);
        if (place) onPick(...place);
      }}
      aria-label={`${setup.surface}, ${setup.startEnd} at the left, ${setup.farEnd} at the right, ${setup.stations} stations`}
    >
      <EndNames across={across} session={session} surfacePx={surfacePx} />
      <Metal across={across} yPx={surfacePx} heightPx={metalPx} />
      <Marks session={session} pxOf={pxOf} suspect={suspect} yPx={surfacePx + metalPx / 2} />
      <Stations session={session} pxOf={pxOf} yPx={surfacePx + metalPx} labelPx={surfacePx + belowPx.label} />
      <Dimension
        fromPx={across.px(0)}
        toPx={across.px(setup.baseMm)}
        yPx={surfacePx + belowPx.step}
        text={lengthText(setup.baseMm, setup.lengthUnit)}
      />
      <Dimension
        fromPx={across.px(0)}
        toPx={across.px(last)}
        yPx={surfacePx + belowPx.total}
        text={lengthText(last, setup.lengthUnit)}
      />
      {ghost && <NextFeet {...feet(next)} />}
      {standsOn && (
        <Level
          {...feet(standsOn)}
          lifted={lifted}
          stale={stale}
          plusAt={facingOf(setup, standsOn.walk) === 1 ? 'to' : 'from'}
        />
      )}
      {picked && <PickedPlace {...feet(picked)} />}
    </svg>
  );
}

/** The two ends by name, each with a leader down to its corner of the metal. */
function EndNames({
  across,
  session,
  surfacePx,
}: Pick<WayProps, 'across' | 'session'> & { surfacePx: number }) {
  const { setup, next } = session;
  const { leftPx, rightPx } = across;
  const direction = next?.walk === 'back' ? 'coming back' : 'going out';
  const room = (rightPx - leftPx) / 2 - 12;
  const names = [fitText(setup.startEnd, 12.5, room), fitText(setup.farEnd, 12.5, room)] as const;
  const free = rightPx - leftPx - textWidth(names[0], 12.5) - textWidth(names[1], 12.5) - 60;
  const middle = (leftPx + rightPx) / 2;
  const half = textWidth(direction, 12.5) / 2;
  const fits = free > 2 * half + 80 && room > half + 60 + textWidth(names[0], 12.5) - half;
  return (
    <g>
      <path class="thin" d={`M${leftPx} 3V${surfacePx - 4}M${rightPx} 3V${surfacePx - 4}`} />
      <text x={leftPx + 7} y={12}>
        {names[0]}
      </text>
      <text x={rightPx - 7} y={12} text-anchor="end">
        {names[1]}
      </text>
      {next && fits && (
        <g>
          <text x={middle} y={12} text-anchor="middle">
            {direction}
          </text>
          {next.walk === 'out' ? (
            <path class="thin" d={`M${middle + half + 6} 8h24m-7 -4l7 4l-7 4`} />
          ) : (
            <path class="thin" d={`M${middle - half - 6} 8h-24m7 -4l-7 4l7 4`} />
          )}
        </g>
      )}
    </g>
  );
}

function PickedPlace({ fromPx, toPx, surfacePx }: Record<'fromPx' | 'toPx' | 'surfacePx', number>) {
  const px = Math.max(8, toPx - fromPx);
  return (
    <rect class="picked" x={(fromPx + toPx - px) / 2} y={surfacePx - 6} width={px} height={metalPx + 12} />
  );
}

interface MarksProps extends Pick<WayProps, 'session' | 'suspect'> {
  readonly pxOf: ReadonlyMap<string, number>;
  readonly yPx: number;
}

/** What became of single steps: skipped ones are crossed, the suspect one carries a triangle. */
function Marks({ session, pxOf, suspect, yPx }: MarksProps) {
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
