import type { StationDifference } from '../job/before-after.ts';
import { html, type Markup } from './html.ts';
import { type HeightScale, heightScale, heightWord } from './scale.ts';
import { dimension, drawing, drawingWidth, label, line, n, type Point, polyline, spaced } from './svg.ts';

/** A line before and after over the part that it runs along, all on one x axis, with its caption. */
export interface ProfileOf {
  readonly id: string;
  readonly title: string;
  /** What the line is called. */
  readonly line: string;
  readonly stations: readonly StationDifference[];
  /** Everything that is to be drawn on the same scale. */
  readonly comparedWith: readonly StationDifference[];
  /** Distance of each station from the first, mm. */
  readonly alongMm: readonly number[];
  /** What the two surveys are called. `after` is null while there is only one. */
  readonly before: string;
  readonly after: string | null;
  /** Allowed range of heights, µm, shown beside them to scale. */
  readonly allowedUm: number | null;
  readonly reference: string;
}

const left = 78;
const right = drawingWidth - 46;
const partTop = 18;
const partBottom = 44;
const chartTop = 132;
const chartBottom = 352;
const height = 362;
/** A label needs so much room. */
const labelWidth = 34;

export function profileDrawing(profile: ProfileOf): Markup {
  const { alongMm, stations } = profile;
  const lengthMm = alongMm.at(-1)! || 1;
  const x = (k: number) => left + ((right - left) * alongMm[k]!) / lengthMm;
  const scale = heightScale(profile.comparedWith, chartTop, chartBottom);
  const grown = (scale.heightOf(1) * 1000) / ((right - left) / lengthMm);
  return html`${drawing(profile.id, height, profile.title, [
    part(profile, x, lengthMm),
    grid(profile, scale, x),
    curve(
      stations.map(({ before }, k) => ({ x: x(k), ...before })),
      scale,
      'before',
    ),
    profile.after !== null
      ? curve(
          stations.map(({ after }, k) => ({ x: x(k), ...after })),
          scale,
          'after',
        )
      : html``,
    key(profile),
  ])}
<figcaption>Height over ${profile.reference}, µm. Grey: sure to (k = 2). Drawn ${Number(grown.toPrecision(2)).toLocaleString('en-US')} × too high.</figcaption>`;
}

function part({ stations, alongMm }: ProfileOf, x: (k: number) => number, lengthMm: number): Markup {
  const shown = spaced(stations.length, (right - left) / Math.max(1, stations.length - 1), labelWidth);
  const last = stations.length - 1;
  const stepMm = alongMm[1]! - alongMm[0]!;
  return html`<rect class="cut" x="${n(left - 14)}" y="${partTop}" width="${n(right - left + 28)}" height="${partBottom - partTop}"/>
${stations.map(({ name }, k) => [
  line([x(k), partBottom], [x(k), partBottom + 8], 'thick'),
  shown(k) && label([x(k), partBottom + 21], name, 'middle', 'strong'),
])}
${dimension([x(0), 84], [x(1), 84], last > 12 ? '' : mm(stepMm))}
${dimension([x(0), 106], [x(last), 106], `${mm(lengthMm)} mm${last > 12 ? `, steps of ${mm(stepMm)} mm` : ''}`)}`;
}

function grid({ stations, allowedUm }: ProfileOf, scale: HeightScale, x: (k: number) => number): Markup {
  const [bottom, top] = [scale.ticks[0]!, scale.ticks.at(-1)!];
  return html`${scale.ticks.map((tick) => [
    line([left, scale.y(tick)], [right, scale.y(tick)], tick === 0 ? 'chain' : 'faint'),
    label([left - 8, scale.y(tick) + 4], heightWord(tick), 'end'),
  ])}
${stations.map((_, k) => line([x(k), scale.y(top)], [x(k), scale.y(bottom)], 'faint'))}
${allowedUm !== null && allowedUm <= top - bottom && allowedRange(allowedUm, scale.y(bottom + allowedUm), scale.y(bottom))}`;
}

/** Beside the lower edge of the chart; the text of a small one reaches above it, never below. */
function allowedRange(allowedUm: number, y1: number, y2: number): Markup {
  const [x, middle] = [right + 22, Math.min((y1 + y2) / 2, y2 - 34)];
  return html`${dimension([x, y1], [x, y2], '')}
<text x="${n(x - 5)}" y="${n(middle)}" text-anchor="middle" transform="rotate(-90 ${n(x - 5)} ${n(middle)})">allowed ${allowedUm}</text>`;
}

function curve(
  points: readonly { x: number; value: number; u: number }[],
  scale: HeightScale,
  kind: 'before' | 'after',
): Markup {
  const edge = (side: 1 | -1): Point[] => points.map(({ x, value, u }) => [x, scale.y(value + side * 2 * u)]);
  const band = [...edge(1), ...edge(-1).toReversed()];
  return html`<polygon class="band" points="${band.map(([px, py]) => `${n(px)},${n(py)}`).join(' ')}"/>
${polyline(
  points.map(({ x, value }) => [x, scale.y(value)]),
  `curve ${kind}`,
)}
${points.map(({ x, value }) => html`<circle class="${kind}" cx="${n(x)}" cy="${n(scale.y(value))}" r="3.2"/>`)}`;
}

function key({ line: name, before, after }: ProfileOf): Markup {
  const y = 126;
  return html`${label([left, y], name, 'start', 'strong')}${line([right - 250, y - 4], [right - 220, y - 4], 'curve before')}<circle class="before" cx="${right - 235}" cy="${y - 4}" r="3.2"/>${label([right - 214, y], before, 'start')}
${after !== null && html`${line([right - 120, y - 4], [right - 90, y - 4], 'curve after')}<circle class="after" cx="${right - 105}" cy="${y - 4}" r="3.2"/>${label([right - 84, y], after, 'start')}`}`;
}

function mm(value: number): string {
  return Number(value.toFixed(1)).toLocaleString('en-US');
}
