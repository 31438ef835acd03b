import type { Print } from '../../../shared/job/blue.ts';
import { say } from '../../words/say.ts';
import type { Across } from '../across.ts';
import { textWidth } from '../text-width.ts';
import { thinLabels } from '../thin-labels.ts';
import type { Placed } from './placed.ts';

interface InkRowsProps {
  readonly across: Across;
  readonly stations: readonly Placed[];
  readonly expected: ReadonlySet<string>;
  readonly print: Print | null;
}

const [rowPx, boxPx, topPx] = [58, 40, 26];
const highPx = topPx + 2 * rowPx + 18;

/** Two rows of boxes on the axis of the part: inked by the numbers, and inked by the blue; below, where it turns. */
export function InkRows({ across, stations, expected, print }: InkRowsProps) {
  const px = stations.map(({ xMm }) => across.px(xMm));
  const stepPx = Math.min(70, ...px.slice(1).map((x, k) => 0.86 * (x - px[k]!)));
  const half = Math.max(3, stepPx / 2);
  const shown = thinLabels(
    stations.map(({ name }, k) => ({ px: px[k]!, widthPx: textWidth(name, 12.5, true), must: false })),
  );
  const rows = [
    { word: say('numbers'), top: topPx, inked: (name: string) => expected.has(name), known: () => true },
    {
      word: say('blue'),
      top: topPx + rowPx,
      inked: (name: string) => print?.stations[name]?.shows ?? false,
      known: (name: string) => print?.stations[name] !== undefined,
    },
  ];
  const apart = (name: string) => {
    const seen = print?.stations[name];
    return seen !== undefined && seen.shows !== expected.has(name);
  };
  return (
    <svg
      class="ink-rows"
      width={across.widthPx}
      height={highPx}
      viewBox={`0 0 ${across.widthPx} ${highPx}`}
      role="img"
      aria-label={stations
        .map(
          ({ name }) =>
            `${name} ${rows.map(({ word, inked }) => `${word} ${inked(name) ? '+' : '–'}`).join(', ')}`,
        )
        .join('; ')}
    >
      {stations.map(
        ({ name }, k) =>
          shown.has(k) && (
            <text key={name} class={apart(name) ? 'apart' : 'done'} x={px[k]} y={14} text-anchor="middle">
              {apart(name) ? `▲ ${name}` : name}
            </text>
          ),
      )}
      {rows.map(({ word, top, inked, known }) => (
        <g key={word}>
          <text class="done" x={2} y={top + boxPx / 2 + 4}>
            {word}
          </text>
          {stations.map(({ name }, k) => {
            const points = print?.stations[name]?.pointsPerInch2;
            return (
              <g key={name}>
                <rect
                  class={known(name) ? 'box' : 'box unknown'}
                  x={px[k]! - half}
                  y={top}
                  width={2 * half}
                  height={boxPx}
                />
                {known(name) && inked(name) && (
                  <rect
                    class="inked"
                    x={px[k]! - half + 3}
                    y={top + 3}
                    width={2 * half - 6}
                    height={boxPx - 6}
                  />
                )}
                {top > topPx && points !== undefined && half > 12 && (
                  <text class="on-ink" x={px[k]} y={top + boxPx / 2 + 4} text-anchor="middle">
                    {points}
                  </text>
                )}
              </g>
            );
          })}
        </g>
      ))}
      {(print?.hingesMm ?? []).map((xMm) => (
        <g key={xMm}>
          <path class="hinge" d={`M${across.px(xMm)} ${topPx + 2 * rowPx - 12}l8 12h-16z`} />
          <text x={across.px(xMm) + 12} y={topPx + 2 * rowPx}>
            {say('turns')}
          </text>
        </g>
      ))}
    </svg>
  );
}
