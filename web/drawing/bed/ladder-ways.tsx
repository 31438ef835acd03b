import { placementKey } from '../../../shared/survey/plan.ts';
import type { Across } from '../across.ts';
import { textWidth } from '../text-width.ts';
import { thinLabels } from '../thin-labels.ts';
import { type BedSession, type LadderRows, wayPx } from './ladder-rows.ts';

interface LadderWaysProps {
  readonly across: Across;
  readonly rows: LadderRows;
  readonly session: BedSession;
  /** The feet that are to be set next, or the place that is pointed at. */
  readonly now: readonly string[];
  /** A line on which the level stands carries no words. */
  readonly busyLine: string | undefined;
  /** Where the level stands along the ways. */
  readonly busyPx: number;
}

/** Both ways in plan: visible edges thick, the ridge of a vee thin, stations with their names. */
export function LadderWays({ across, rows, session, now, busyLine, busyPx }: LadderWaysProps) {
  const { setup, plan } = session;
  const centre = (across.leftPx + across.rightPx) / 2;
  const feet = new Set([...session.counted.values()].flatMap(({ place }) => place.at));
  return (
    <g>
      {(['rear', 'front'] as const).map((line) => {
        const middle = line === 'rear' ? rows.rearPx : rows.frontPx;
        const walked = plan.runs.some(
          (run) =>
            run.line === line &&
            run.id !== 'across' &&
            run.reads === 'tilt' &&
            run.feet.some((at) => session.counted.has(placementKey({ run: run.id, at }))),
        );
        const vee = (line === 'rear' ? setup.rearShape : setup.frontShape) === 'vee';
        return (
          <g key={line}>
            <rect
              class="metal"
              x={across.leftPx}
              y={middle - wayPx / 2}
              width={across.rightPx - across.leftPx}
              height={wayPx}
            />
            {vee && walked && <path class="thin" d={`M${across.leftPx} ${middle}H${across.rightPx}`} />}
            <WayStations
              across={across}
              names={plan.lines[line] ?? []}
              session={session}
              middlePx={middle}
              labelPx={line === 'rear' ? rows.rearLabelPx : rows.frontLabelPx}
              feet={feet}
              now={now}
            />
            {!walked && busyLine !== line && (
              <NotWalked across={across} middlePx={middle} atEnd={busyPx < centre} />
            )}
          </g>
        );
      })}
    </g>
  );
}

const notWalked = 'not walked yet';

/** At the end of the way from which the level is farther. */
function NotWalked({ across, middlePx, atEnd }: { across: Across; middlePx: number; atEnd: boolean }) {
  const { leftPx, rightPx } = across;
  const half = textWidth(notWalked, 12.5) / 2 + 4;
  const px = atEnd ? rightPx - half - 8 : leftPx + half + 8;
  return (
    <g>
      <rect class="blank" x={px - half} y={middlePx - wayPx / 2 + 2} width={2 * half} height={wayPx - 4} />
      <text x={px} y={middlePx + 4.5} text-anchor="middle">
        {notWalked}
      </text>
    </g>
  );
}

interface WayStationsProps {
  readonly across: Across;
  readonly session: BedSession;
  readonly names: readonly string[];
  readonly middlePx: number;
  readonly labelPx: number;
  readonly feet: ReadonlySet<string>;
  readonly now: readonly string[];
}

function WayStations({ across, session, names, middlePx, labelPx, feet, now }: WayStationsProps) {
  const xOf = new Map(session.plan.stations.map(({ name, xMm }) => [name, xMm]));
  const px = (name: string) => across.px(xOf.get(name) ?? 0);
  const onLine = now.filter((name) => names.includes(name));
  const shown = thinLabels(
    names.map((name) => ({
      px: px(name),
      widthPx: textWidth(name, 12.5, true),
      must: onLine.includes(name),
    })),
  );
  const edge = wayPx / 2;
  return (
    <g>
      {names.map((name, k) => (
        <g key={name}>
          <path
            data-at={name}
            class={`tick ${feet.has(name) ? 'done' : ''}`}
            d={feet.has(name) ? `M${px(name)} ${middlePx - edge}v${wayPx}` : `M${px(name)} ${middlePx - 3}v6`}
          />
          {shown.has(k) && (
            <text
              class={onLine.includes(name) ? 'now' : feet.has(name) ? 'done' : ''}
              x={px(name)}
              y={labelPx}
              text-anchor="middle"
            >
              {name}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}
