import { bytesOf, fromHex } from './bytes.ts';
import type { Sum } from './profile.ts';
import { sumOf, sumWidth } from './sums.ts';

/** How many bytes of a frame its mark and checksum take. */
export function sealLength(sum: Sum | undefined): number {
  if (!sum) return 0;
  return markOf(sum).length + sumWidth[sum.kind] * (sum.as === 'hex' ? 2 : 1);
}

/** What stands before the checksum, when the checksum is right; else why not. Linear in the frame. */
export function opened(sum: Sum | undefined, frame: string): { content: string } | { why: string } {
  if (!sum) return { content: frame };
  const content = frame.slice(0, Math.max(0, frame.length - sealLength(sum)));
  const found = frame.slice(content.length);
  const right = sealOf(sum, content);
  const same = sum.as === 'hex' ? found.toLowerCase() === right.toLowerCase() : found === right;
  return same ? { content } : { why: 'its checksum is wrong' };
}

/** `content` with its checksum behind it. */
export function sealed(sum: Sum | undefined, content: string): string {
  return sum ? content + sealOf(sum, content) : content;
}

function sealOf(sum: Sum, content: string): string {
  const value = sumOf(sum.kind, content.slice(sum.from));
  const hex = value
    .toString(16)
    .padStart(2 * sumWidth[sum.kind], '0')
    .toUpperCase();
  const ordered = sum.order === 'low-first' ? hex.slice(2) + hex.slice(0, 2) : hex;
  return markOf(sum) + (sum.as === 'hex' ? ordered : fromHex(ordered));
}

function markOf({ mark }: Sum): string {
  return mark === undefined ? '' : bytesOf(mark);
}
