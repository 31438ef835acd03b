import type { Session } from '../../shared/session/fold.ts';
import { facingOf, type Placement, placementKey, stationsOf } from '../../shared/survey/way.ts';
import { lengthText } from '../words/length.ts';
import type { Across } from './across.ts';
import { Dimension } from './dimension.tsx';
import { EndNames } from './end-names.tsx';
import { Level, NextFeet } from './level.tsx';
import { Marks, PickedPlace } from './marks.tsx';
import { Metal } from './metal.tsx';
import { Stations } from './stations.tsx';

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
      {picked && <PickedPlace {...feet(picked)} metalPx={metalPx} />}
    </svg>
  );
}
