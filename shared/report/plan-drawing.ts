import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { html, type Markup } from './html.ts';
import { dimension, drawing, drawingWidth, label, n } from './svg.ts';

/** A plate from above: something said of every station, and how dark its ink is. */
export interface PlanOf {
  readonly id: string;
  readonly title: string;
  readonly heights: Pick<AdjustedHeights, 'names' | 'xMm' | 'yMm'>;
  /** Share of ink from 0, bare, to 1, and the text below the mark; null where nothing is known. */
  readonly mark: (name: string) => { readonly ink: number; readonly text: string } | null;
  readonly foot: string;
}

const left = 60;
const right = drawingWidth - 60;
const top = 40;
/** Steps of ink that can be counted. */
const INK_STEPS = 5;

export function planDrawing({ id, title, heights, mark, foot }: PlanOf): Markup {
  const { names, xMm, yMm } = heights;
  const [x0, x1, y0, y1] = [Math.min(...xMm), Math.max(...xMm), Math.min(...yMm), Math.max(...yMm)];
  const scale = Math.min((right - left - 40) / (x1 - x0 || 1), 380 / (y1 - y0 || 1));
  const wide = (x1 - x0) * scale;
  const bottom = top + (y1 - y0) * scale + 40;
  const x = (k: number) => (left + right - wide) / 2 + (xMm[k]! - x0) * scale;
  const y = (k: number) => bottom - 20 - (yMm[k]! - y0) * scale;
  const edge = { left: (left + right - wide) / 2 - 20, width: wide + 40 };
  return drawing(id, bottom + 60, title, [
    html`<rect class="outline" x="${n(edge.left)}" y="${top}" width="${n(edge.width)}" height="${n(bottom - top)}"/>`,
    html`${names.map((name, k) => {
      const said = mark(name);
      if (!said) return false;
      const step = Math.round(said.ink * INK_STEPS) / INK_STEPS;
      return [
        html`<rect class="ink" x="${n(x(k) - 7)}" y="${n(y(k) - 7)}" width="14" height="14" fill-opacity="${n(step)}"/>`,
        label([x(k), y(k) + 18], said.text, 'middle', 'small'),
      ];
    })}`,
    dimension(
      [edge.left + 20, bottom + 22],
      [edge.left + 20 + wide, bottom + 22],
      `${Math.round(x1 - x0)} mm`,
    ),
    label([left, bottom + 48], foot, 'start'),
  ]);
}
