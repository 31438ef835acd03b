import type { Measured } from '../job/before-after.ts';
import { html, type Markup } from './html.ts';
import { drawing, label, line, n, niceStep, polyline, spaced } from './svg.ts';

/** A figure round by round, with its doubt and its limit. */
export interface ConvergenceOf {
  readonly id: string;
  readonly title: string;
  readonly rounds: readonly { readonly name: string; readonly figure: Measured }[];
  readonly limit: number | null;
}

const left = 78;
const right = 640;
const top = 14;
const bottom = 150;
const COVERAGE = 2;
/** A label needs so much room. */
const labelWidth = 64;

export function convergenceDrawing({ id, title, rounds, limit }: ConvergenceOf): Markup {
  const most = Math.max(
    limit ?? 0,
    ...rounds.map(({ figure }) => Math.abs(figure.value) + COVERAGE * figure.u),
  );
  const step = niceStep(Math.max(most, 1e-6), 5);
  const last = Math.ceil(most / step) * step;
  const y = (value: number) => bottom - ((bottom - top) * value) / last;
  const x = (k: number) => left + 40 + ((right - left - 80) * k) / Math.max(1, rounds.length - 1);
  const ticks = Array.from({ length: Math.round(last / step) + 1 }, (_, k) =>
    Number((k * step).toPrecision(9)),
  );
  const shown = spaced(rounds.length, x(1) - x(0), labelWidth);
  const points = rounds.map(({ figure }, k) => [x(k), y(Math.abs(figure.value))] as const);
  return drawing(id, 172, title, [
    html`${ticks.map((tick) => [line([left, y(tick)], [right, y(tick)], 'faint'), label([left - 8, y(tick) + 4], String(tick), 'end')])}`,
    html`${limit !== null && [line([left, y(limit)], [right, y(limit)], 'chain heavy'), label([right + 6, y(limit) + 4], `limit ${limit}`, 'start', 'strong')]}`,
    polyline(points, 'curve after'),
    html`${rounds.map(({ name, figure }, k) => {
      const [px, py] = points[k]!;
      const reach = (COVERAGE * figure.u * (bottom - top)) / last;
      return [
        line([px, py - reach], [px, py + reach], 'thick'),
        html`<circle class="after" cx="${n(px)}" cy="${n(py)}" r="3.2"/>`,
        shown(k) && label([px, bottom + 16], name, 'middle'),
      ];
    })}`,
  ]);
}
