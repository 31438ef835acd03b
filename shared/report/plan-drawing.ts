import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { html, type Markup } from './html.ts';
import { dimension, drawing, drawingWidth, label, n } from './svg.ts';

/** A plate from above: every station with its name, its ink, and what is said of it, which stands in the caption. */
export interface PlanOf {
  readonly id: string;
  readonly title: string;
  readonly heights: Pick<AdjustedHeights, 'names' | 'xMm' | 'yMm'>;
  /** Share of ink from 0, bare, to 1, and the text below the mark; null where nothing is known. */
  readonly mark: (name: string) => { readonly ink: number; readonly text: string } | null;
}

const left = 60;
const right = drawingWidth - 60;
const top = 8;
/** Room between the outermost stations and the edge: half a label, and one line of text. */
const [aside, above, below] = [34, 18, 30];
/** No plan is higher, so that before and after find room on one page. */
const mostHigh = 300;
/** Steps of ink that can be counted. */
const INK_STEPS = 5;

export function planDrawing({ id, title, heights, mark }: PlanOf): Markup {
  const { names, xMm, yMm } = heights;
  const [x0, x1, y0, y1] = [Math.min(...xMm), Math.max(...xMm), Math.min(...yMm), Math.max(...yMm)];
  const scale = Math.min((right - left - 2 * aside) / (x1 - x0 || 1), mostHigh / (y1 - y0 || 1));
  const wide = (x1 - x0) * scale;
  const bottom = top + above + (y1 - y0) * scale + below;
  const x = (k: number) => (left + right - wide) / 2 + (xMm[k]! - x0) * scale;
  const y = (k: number) => bottom - below - (yMm[k]! - y0) * scale;
  const edge = { left: (left + right - wide) / 2 - aside, width: wide + 2 * aside };
  return drawing(id, bottom + 30, title, [
    html`<rect class="outline" x="${n(edge.left)}" y="${top}" width="${n(edge.width)}" height="${n(bottom - top)}"/>`,
    html`${names.map((name, k) => {
      const said = mark(name);
      if (!said) return false;
      const step = Math.round(said.ink * INK_STEPS) / INK_STEPS;
      return [
        html`<rect class="ink" x="${n(x(k) - 7)}" y="${n(y(k) - 7)}" width="14" height="14" fill-opacity="${n(step)}"/>`,
        label([x(k) + 10, y(k) + 3], name, 'start', 'small'),
        label([x(k), y(k) + 18], said.text, 'middle', 'small'),
      ];
    })}`,
    dimension(
      [edge.left + aside, bottom + 22],
      [edge.left + aside + wide, bottom + 22],
      `${Math.round(x1 - x0)} mm`,
    ),
  ]);
}
