import { html, type Markup } from './html.ts';

/** The few strokes that a shop drawing is made of (line kinds after ISO 128, dimensions after ISO 129). */

/** Width of every drawing in its own units; on paper it fills the width of the sheet. */
export const drawingWidth = 720;

/** A coordinate as it is written: two decimals are finer than any printer. */
export function n(value: number): string {
  return String(Math.round(value * 100) / 100);
}

export type Point = readonly [number, number];

export function polyline(points: readonly Point[], className: string): Markup {
  return html`<polyline class="${className}" points="${points.map(([x, y]) => `${n(x)},${n(y)}`).join(' ')}"/>`;
}

export function line([x1, y1]: Point, [x2, y2]: Point, className: string): Markup {
  return html`<line class="${className}" x1="${n(x1)}" y1="${n(y1)}" x2="${n(x2)}" y2="${n(y2)}"/>`;
}

export function label(
  [x, y]: Point,
  text: string,
  anchor: 'start' | 'middle' | 'end',
  className = '',
): Markup {
  return html`<text class="${className}" x="${n(x)}" y="${n(y)}" text-anchor="${anchor}">${text}</text>`;
}

/** A dimension between two points on one level or upright, with arrowheads and its text, if any, beside the line. */
export function dimension(from: Point, to: Point, text: string): Markup {
  const upright = from[0] === to[0];
  const middle: Point = upright ? [from[0] - 5, (from[1] + to[1]) / 2] : [(from[0] + to[0]) / 2, from[1] - 4];
  const turn = upright ? html` transform="rotate(-90 ${n(middle[0])} ${n(middle[1])})"` : '';
  return html`<line class="thin arrows" x1="${n(from[0])}" y1="${n(from[1])}" x2="${n(to[0])}" y2="${n(to[1])}"/>
${text !== '' && html`<text x="${n(middle[0])}" y="${n(middle[1])}" text-anchor="middle"${turn}>${text}</text>`}`;
}

/** A drawing of the given height, with hatching and arrowheads of its own. `name` tells its patterns apart. */
export function drawing(name: string, height: number, title: string, content: readonly Markup[]): Markup {
  return html`<svg class="drawing" id="${name}" viewBox="0 0 ${drawingWidth} ${n(height)}" role="img" aria-label="${title}">
${content}
</svg>`;
}

/** Put once into a document: the hatching and the arrowheads that its drawings use. */
export const drawingParts: Markup = html`<svg width="0" height="0" aria-hidden="true" style="position:absolute"><defs>
<pattern id="cut" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line class="hatch" x1="0" y1="0" x2="0" y2="7"/></pattern>
<pattern id="left-out" width="4" height="4" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)"><line class="hatch" x1="0" y1="0" x2="0" y2="4"/></pattern>
<marker id="arrow" viewBox="0 0 10 6" refX="10" refY="3" markerWidth="9" markerHeight="6" orient="auto-start-reverse"><path d="M0,0.8 L10,3 L0,5.2 z"/></marker>
</defs></svg>`;

/** Steps of 1, 2 or 5 that divide a range into at most `most` parts. */
export function niceStep(range: number, most: number): number {
  const raw = Math.max(range, 1e-9) / most;
  const power = 10 ** Math.floor(Math.log10(raw));
  return [1, 2, 5, 10].map((each) => each * power).find((step) => step >= raw * (1 - 1e-9))!;
}

/** Which of `count` labels that stand `apart` from each other have room; the last always has. */
export function spaced(count: number, apart: number, labelWidth: number): (k: number) => boolean {
  const every = Math.max(1, Math.ceil(labelWidth / apart));
  return (k) => k === count - 1 || (k % every === 0 && count - 1 - k >= every);
}
