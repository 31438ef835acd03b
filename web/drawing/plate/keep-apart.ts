import { textWidth } from '../text-width.ts';

export interface PlacedLabel {
  readonly text: string;
  readonly x: number;
  /** Baseline. */
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly kind: 'live' | 'name';
}

export const labelPx = 12.5;
const gapPx = 4;

/** Of the labels in order of importance those that touch none before them. */
export function keepApart(labels: readonly PlacedLabel[]): PlacedLabel[] {
  const kept: PlacedLabel[] = [];
  for (const label of labels) if (kept.every((other) => !touch(boxOf(label), boxOf(other)))) kept.push(label);
  return kept;
}

function boxOf({ text, x, y, anchor }: PlacedLabel) {
  const width = textWidth(text, labelPx, true);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - labelPx, bottom: y + 3 };
}

type Box = ReturnType<typeof boxOf>;

function touch(a: Box, b: Box): boolean {
  return a.left < b.right + gapPx && b.left < a.right + gapPx && a.top < b.bottom + 1 && b.top < a.bottom + 1;
}
