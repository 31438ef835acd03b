import { asWritten } from '../../words/quantity.ts';
import { heightLabel } from '../heights-axis.ts';
import { textWidth } from '../text-width.ts';
import { inkOf, type TintSteps } from './tint-steps.ts';

/** What the ink means: bare is low, inked is high, and how much a step is. */
export function TintScale({
  steps,
  widthPx,
  notes,
}: {
  steps: TintSteps;
  widthPx: number;
  notes: readonly string[];
}) {
  const { fromUm, stepUm, count } = steps;
  const low = heightLabel(fromUm, stepUm);
  const high = heightLabel(fromUm + count * stepUm, stepUm);
  const leftPx = 8 + textWidth(low, 12.5) + 6;
  const stepPx = Math.min(34, (widthPx - leftPx - textWidth(high, 12.5) - 14) / count);
  return (
    <div class="tint-scale">
      <svg width={widthPx} height={20} viewBox={`0 0 ${widthPx} 20`} aria-hidden="true">
        <text x={leftPx - 6} y={14} text-anchor="end">
          {low}
        </text>
        {Array.from({ length: count }, (_, step) => leftPx + step * stepPx).map((px, step) => (
          <rect
            key={px}
            class="step"
            x={px}
            y={2.5}
            width={Math.max(0, stepPx)}
            height={14}
            style={{ fillOpacity: inkOf(steps, step) }}
          />
        ))}
        <text x={leftPx + count * stepPx + 6} y={14}>
          {high}
        </text>
      </svg>
      <p class="caption-line">
        {`Bare = low, inked = high, ${asWritten().exact(stepUm)} a step. Between the stations it is taken to run straight. ${notes.join(' ')}`}
      </p>
    </div>
  );
}
