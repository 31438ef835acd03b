import type { JobSurvey } from '../../../shared/job/survey.ts';
import { textWidth } from '../text-width.ts';

interface StationPlanProps {
  readonly survey: JobSurvey;
  readonly widthPx: number;
  readonly heightPx: number;
  /** What is drawn: written over the plate. */
  readonly label: string;
  /** How dark a station is, 0 to 1, and the word on it, or beside its name; null where nothing is known. */
  mark(name: string): { readonly ink: number; readonly text: string } | null;
}

/** Room for words over and under the plate, and at its sides, px. */
const [abovePx, belowPx, sidePx] = [40, 20, 6];
/** From the outline of the plate to its outermost stations, px. */
const edgePx = 15;
/** Names carry their words at the corners only where three of them do not go side by side, px. */
const roomyPx = 330;
/** A spot of at least this radius carries its own word, px. */
const wordInPx = 10;

/** A plate from above: at each station how much ink, and a word. The same for heights, passes and prints. */
export function StationPlan({ survey, widthPx, heightPx, label, mark }: StationPlanProps) {
  const { names, xMm, yMm } = survey.heights;
  const [x0, x1] = [Math.min(...xMm), Math.max(...xMm)];
  const [y0, y1] = [Math.min(...yMm), Math.max(...yMm)];
  const scale = Math.min(
    (widthPx - 2 * (sidePx + edgePx)) / Math.max(1, x1 - x0),
    (heightPx - abovePx - belowPx - 2 * edgePx) / Math.max(1, y1 - y0),
  );
  const r = Math.max(5, Math.min(19, 0.42 * scale * nearest(xMm, yMm)));
  const plate = {
    x: sidePx,
    y: abovePx,
    width: scale * (x1 - x0) + 2 * edgePx,
    height: scale * (y1 - y0) + 2 * edgePx,
  };
  const across = thirds(x0, x1);
  const along = thirds(y0, y1);
  return (
    <svg
      class="station-plan"
      width={plate.width + 2 * sidePx}
      height={plate.height + abovePx + belowPx}
      viewBox={`0 0 ${plate.width + 2 * sidePx} ${plate.height + abovePx + belowPx}`}
      role="img"
      aria-label={label}
    >
      <text class="heading" x={sidePx} y={15}>
        {label}
      </text>
      <rect class="metal" {...plate} />
      {names.map((name, k) => {
        const found = mark(name);
        const [px, py] = [
          plate.x + edgePx + scale * (xMm[k]! - x0),
          plate.y + edgePx + scale * (y1 - yMm[k]!),
        ];
        const inside = found !== null && found.text !== '' && r > wordInPx;
        const [column, row] = [across(xMm[k]!), along(yMm[k]!)];
        const corner = column !== 'middle' && row !== 'middle';
        const roomy = plate.width >= roomyPx;
        return (
          <g key={name} data-station={name} data-ink={found?.ink} data-text={found?.text}>
            <circle class="spot" cx={px} cy={py} r={r} />
            {found && <circle class="spot-ink" cx={px} cy={py} r={r} fill-opacity={0.7 * found.ink} />}
            {inside && (
              <text class="done clear" x={px} y={py + 4} text-anchor="middle">
                {found.text}
              </text>
            )}
            {column !== null && row !== null && (roomy || row !== 'middle') && (
              <Name
                words={inside || !found?.text || !(roomy || corner) ? name : `${name} ${found.text}`}
                {...{ px, py, r, column, row, plate }}
              />
            )}
          </g>
        );
      })}
    </svg>
  );
}

type Third = 'start' | 'middle' | 'end';

/** Whether a place is at the start, the middle or the end of a reach; null between. */
function thirds(from: number, to: number): (at: number) => Third | null {
  const near = (a: number, b: number) => Math.abs(a - b) < 0.01 * Math.max(1, to - from);
  return (at) =>
    near(at, from) ? 'start' : near(at, to) ? 'end' : near(at, (from + to) / 2) ? 'middle' : null;
}

interface NameProps {
  readonly words: string;
  readonly px: number;
  readonly py: number;
  readonly r: number;
  readonly column: Third;
  readonly row: Third;
  readonly plate: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

/** A name outside of the plate at its near and far edge, and beside its spot within. */
function Name({ words, px, py, r, column, row, plate }: NameProps) {
  if (row === 'middle') {
    const left = column === 'end' || px + r + 4 + textWidth(words, 12.5, true) > plate.x + plate.width;
    return (
      <text
        class="done clear"
        x={left ? px - r - 3 : px + r + 3}
        y={py - r}
        text-anchor={left ? 'end' : 'start'}
      >
        {words}
      </text>
    );
  }
  const x = column === 'start' ? plate.x : column === 'end' ? plate.x + plate.width : px;
  const y = row === 'end' ? plate.y - 7 : plate.y + plate.height + 16;
  return (
    <text class="done" x={x} y={y} text-anchor={column}>
      {words}
    </text>
  );
}

function nearest(xMm: Float64Array, yMm: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let a = 0; a < xMm.length; a += 1) {
    for (let b = 0; b < a; b += 1) least = Math.min(least, Math.hypot(xMm[a]! - xMm[b]!, yMm[a]! - yMm[b]!));
  }
  return Number.isFinite(least) ? least : 1;
}
