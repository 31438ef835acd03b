import type { Result } from '../../../shared/sheet/result.ts';
import type { Across } from '../across.ts';
import { textWidth } from '../text-width.ts';
import { thinLabels } from '../thin-labels.ts';
import { passCells } from './pass-cells.ts';

export interface PassStripProps {
  readonly across: Across;
  /** Name in front of the strip; left out for a single way. */
  readonly title?: string;
  /** Where the stations stand on the shared axis. */
  readonly stations: readonly { readonly name: string; readonly xMm: number }[];
  /** What is to come off, of this line. */
  readonly metal: Result['metal'][string];
  /** The most passes in any strip that is drawn beside this one, so that one pass is as high in all. */
  readonly mostPasses?: number;
}

const boxPx = 34;
const labelPx = boxPx + 15;

/** Passes to take off at each station, one bar a pass; what is less than its own uncertainty is only hatched. */
export function PassStrip({ across, title, stations, metal, mostPasses }: PassStripProps) {
  const cells = passCells(stations, metal.stations);
  const most = Math.max(1, mostPasses ?? 0, ...cells.map(({ passes }) => passes));
  const stepPx = Math.min(
    78,
    ...cells.slice(1).map(({ xMm }, k) => 0.86 * Math.abs(across.px(xMm) - across.px(cells[k]!.xMm))),
  );
  // At the ends, a box as broad as the others would reach beyond the drawing.
  const half = Math.max(2, Math.min(stepPx / 2, across.px(cells[0]?.xMm ?? 0) - 46));
  const roomy = cells.every(({ words }) => textWidth(words, 12.5) < stepPx / 0.86 - 4);
  const texts = cells.map(({ words, short }) => (roomy ? words : short));
  const shown = thinLabels(
    cells.map(({ xMm }, k) => ({
      px: across.px(xMm),
      widthPx: textWidth(texts[k]!, 12.5) - 4,
      must: false,
    })),
  );
  const barPx = Math.min(11, (boxPx - 2) / most);
  return (
    <svg
      class="pass-strip"
      width={across.widthPx}
      height={labelPx + 4}
      viewBox={`0 0 ${across.widthPx} ${labelPx + 4}`}
      role="img"
      aria-label={`${title ? `${title}: ` : ''}${cells.map(({ name, words }) => `${name} ${words}`).join(', ')}`}
    >
      {title && (
        <text class="done" x={4} y={boxPx / 2 + 4}>
          {title}
        </text>
      )}
      {cells.map(({ name, xMm, passes, hatched }, k) => {
        const px = across.px(xMm);
        return (
          <g key={name}>
            <rect class="box" x={px - half} y={0.5} width={2 * half} height={boxPx} />
            {Array.from({ length: passes }, (_, pass) => (
              <rect
                key={pass}
                class={hatched ? 'not-worth' : 'pass'}
                x={px - half + 1.5}
                y={boxPx - (pass + 1) * barPx}
                width={Math.max(1, 2 * half - 3)}
                height={Math.max(0.75, barPx - 1.5)}
              />
            ))}
            {hatched && (
              <Hatch
                fromPx={px - half + 1.5}
                toPx={px + half - 1.5}
                topPx={boxPx - barPx}
                downPx={boxPx - 1}
              />
            )}
            {shown.has(k) && (
              <text x={px} y={labelPx} text-anchor="middle">
                {texts[k]}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}

/** Thin lines at 45°. */
function Hatch({
  fromPx,
  toPx,
  topPx,
  downPx,
}: {
  fromPx: number;
  toPx: number;
  topPx: number;
  downPx: number;
}) {
  const high = downPx - topPx;
  const lines: string[] = [];
  for (let px = fromPx - high; px < toPx; px += 5) {
    const [from, to] = [Math.max(px, fromPx), Math.min(px + high, toPx)];
    lines.push(`M${from} ${downPx - (from - px)}L${to} ${downPx - (to - px)}`);
  }
  return <path class="hatching" d={lines.join('')} />;
}
