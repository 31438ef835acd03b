import type { JobSurvey } from '../../../shared/job/survey.ts';

interface StationPlanProps {
  readonly survey: JobSurvey;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly label: string;
  /** How dark a station is, 0 to 1, and the word on it; null where nothing is known. */
  mark(name: string): { readonly ink: number; readonly text: string } | null;
}

const marginPx = 26;

/** A plate from above: at each station how much ink, and a word. The same for heights, passes and prints. */
export function StationPlan({ survey, widthPx, heightPx, label, mark }: StationPlanProps) {
  const { names, xMm, yMm } = survey.heights;
  const [x0, x1] = [Math.min(...xMm), Math.max(...xMm)];
  const [y0, y1] = [Math.min(...yMm), Math.max(...yMm)];
  const scale = Math.min(
    (widthPx - 2 * marginPx) / Math.max(1, x1 - x0),
    (heightPx - 2 * marginPx) / Math.max(1, y1 - y0),
  );
  const r = Math.max(5, Math.min(19, 0.42 * scale * nearest(xMm, yMm)));
  return (
    <svg
      class="station-plan"
      width={widthPx}
      height={heightPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
      role="img"
      aria-label={label}
    >
      <rect
        class="metal"
        x={2}
        y={2}
        width={scale * (x1 - x0) + 2 * marginPx - 4}
        height={scale * (y1 - y0) + 2 * marginPx - 4}
      />
      {names.map((name, k) => {
        const found = mark(name);
        const [px, py] = [marginPx + scale * (xMm[k]! - x0), marginPx + scale * (y1 - yMm[k]!)];
        return (
          <g key={name}>
            <circle class="spot" cx={px} cy={py} r={r} />
            {found && <circle class="spot-ink" cx={px} cy={py} r={r} fill-opacity={0.7 * found.ink} />}
            {found && r > 10 && (
              <text class="done clear" x={px} y={py + 4} text-anchor="middle">
                {found.text}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}

function nearest(xMm: Float64Array, yMm: Float64Array): number {
  let least = Number.POSITIVE_INFINITY;
  for (let a = 0; a < xMm.length; a += 1) {
    for (let b = 0; b < a; b += 1) least = Math.min(least, Math.hypot(xMm[a]! - xMm[b]!, yMm[a]! - yMm[b]!));
  }
  return Number.isFinite(least) ? least : 1;
}
