import { written } from '../words/reader.ts';

/** About how wide a text is, in px, in the page's type: enough to keep labels apart before they are drawn. */
export function textWidth(text: string, sizePx: number, bold = false): number {
  return written(text).length * sizePx * (bold ? 0.64 : 0.6);
}

/** The text, cut with an ellipsis where it would be wider than `widthPx`. */
export function fitText(text: string, sizePx: number, widthPx: number): string {
  const whole = written(text);
  if (textWidth(whole, sizePx) <= widthPx) return whole;
  const letters = Math.max(1, Math.floor(widthPx / (0.6 * sizePx)) - 1);
  return `${whole.slice(0, letters).trimEnd()}…`;
}
