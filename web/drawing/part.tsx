import type { Session } from '../../shared/session/fold.ts';
import { type Placement, placementKey, placementsOf } from '../../shared/survey/plan.ts';
import { middleOf, runNow, runOf, stationsAlong } from '../state/on-plan.ts';
import { lengthText } from '../words/length.ts';
import type { Across } from './across.ts';
import { Dimension } from './dimension.tsx';
import { EndNames } from './end-names.tsx';
import { Instrument, NextPlace } from './instrument.tsx';
import { Marks, PickedPlace } from './marks.tsx';
import { Metal, RoundBar } from './metal.tsx';
import { Stations } from './stations.tsx';

/** What stands on the part, what is pointed at and what is odd: the same for every kind of drawing. */
export interface OnPart {
  readonly session: Session;
  /** Where the instrument is drawn; null when it is off the metal (result). */
  readonly standsOn: Placement | null;
  readonly lifted: boolean;
  /** Nothing is heard of the instrument now. */
  readonly stale?: boolean;
  /** The place that the person points at, to read it again. */
  readonly picked: Placement | null;
  /** The one reading that disagrees with the others. */
  readonly suspect: Placement | null;
  onPick?(place: Placement): void;
}

interface PartProps extends OnPart {
  readonly across: Across;
  readonly line: string;
  /** What this line is called, when there are several. */
  readonly title: string | null;
  /** Whether the ends are named above it, and lengths written below it. */
  readonly first: boolean;
  readonly last: boolean;
}

/** Heights of the rows of one line, px from the top of its drawing. Without an instrument the metal moves up. */
function rowsOf({ first, last, title }: PartProps, busy: boolean) {
  const metalPx = title === null ? 28 : 20;
  const surfacePx = busy ? (first ? 76 : 68) : first ? 20 : 5;
  const stepDownPx = title === null ? 20 : 17;
  const labelPx = surfacePx + metalPx + (title === null ? 24 : 22);
  return {
    surfacePx,
    metalPx,
    labelPx,
    stepPx: labelPx + stepDownPx,
    totalPx: labelPx + stepDownPx + 18,
    heightPx: last ? labelPx + stepDownPx + 25 : labelPx + 4,
  };
}

/** One line of the part to scale: its ends, its stations, the instrument on them, and its dimensions. */
export function Part(props: PartProps) {
  const { across, session, line, title, first, last, standsOn, lifted, stale = false } = props;
  const { picked, suspect, onPick } = props;
  const { setup, next } = session;
  const onLine = (place: Placement | null) => place !== null && runOf(session, place.run)?.line === line;
  const run = runNow(session);
  const busy = !session.ended && run?.line === line;
  const { surfacePx, metalPx, labelPx, stepPx, totalPx, heightPx } = rowsOf(props, busy);
  const stations = stationsAlong(session, line);
  const pxOf = new Map(stations.map(({ name, xMm }) => [name, across.px(xMm)]));
  const at = (place: Placement) => ({ px: place.at.map((name) => pxOf.get(name) ?? 0), surfacePx });
  const ghost = !session.ended && next && standsOn && placementKey(next) !== placementKey(standsOn);
  const pickAt = (px: number) => {
    const here = busy ? run : session.runs.find((known) => known.line === line);
    const away = (place: Placement) => Math.abs(across.px(middleOf(session, place).xMm) - px);
    return here
      ? placementsOf(here).reduce((best, place) => (away(place) < away(best) ? place : best))
      : null;
  };
  const Surface = setup.kind === 'bar' ? RoundBar : Metal;
  const tip = standsOn && onLine(standsOn) && standsOn.at.length === 1 ? standsOn.at[0] : null;
  const tipPx = tip === null ? null : (pxOf.get(tip) ?? null);
  const endMm = stations.at(-1)?.xMm ?? 0;
  const stepMm = stations[1]?.xMm ?? endMm;
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the keyboard's way to the same is Repeat with the arrow keys
    <svg
      width={across.widthPx}
      height={heightPx}
      viewBox={`0 0 ${across.widthPx} ${heightPx}`}
      role="img"
      class={onPick ? 'picks' : ''}
      onClick={(event) => {
        const place = onPick && pickAt(event.offsetX);
        if (place) onPick(place);
      }}
      aria-label={`${title ?? setup.surface}${endsText(session)}, ${stations.length} stations`}
    >
      {(first || busy) && (
        <EndNames
          across={across}
          session={session}
          surfacePx={surfacePx}
          busy={busy}
          avoidPx={tipPx}
          named={first}
        />
      )}
      <Surface across={across} yPx={surfacePx} heightPx={metalPx} />
      {title && (
        <text x={across.leftPx - 8} y={surfacePx + metalPx / 2 + 4} text-anchor="end">
          {title}
        </text>
      )}
      <Marks
        session={session}
        pxOf={pxOf}
        suspect={onLine(suspect) ? suspect : null}
        yPx={surfacePx + metalPx / 2}
      />
      <Stations session={session} line={line} pxOf={pxOf} yPx={surfacePx + metalPx} labelPx={labelPx} />
      {last && (
        <>
          <Dimension
            fromPx={across.px(0)}
            toPx={across.px(stepMm)}
            yPx={stepPx}
            text={lengthText(stepMm, setup.lengthUnit)}
          />
          <Dimension
            fromPx={across.px(0)}
            toPx={across.px(endMm)}
            yPx={totalPx}
            text={lengthText(endMm, setup.lengthUnit)}
          />
        </>
      )}
      {ghost && onLine(next) && <NextPlace {...at(next)} />}
      {standsOn && onLine(standsOn) && (
        <Instrument
          session={session}
          place={standsOn}
          {...at(standsOn)}
          metalPx={metalPx}
          lifted={lifted}
          stale={stale}
        />
      )}
      {picked && onLine(picked) && <PickedPlace {...at(picked)} metalPx={metalPx} />}
    </svg>
  );
}

function endsText({ setup }: Session): string {
  return 'startEnd' in setup ? `, ${setup.startEnd} at the left, ${setup.farEnd} at the right` : '';
}
