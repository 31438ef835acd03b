/** A label in the middle of `px`, `widthPx` wide; `must` is never thinned away. */
export interface Label {
  readonly px: number;
  readonly widthPx: number;
  readonly must: boolean;
}

const gapPx = 8;

/**
 * Which labels to write so that none touches another: the ones that must stand, then the two ends, then
 * every k-th of the rest with the smallest round k that leaves room.
 */
export function thinLabels(labels: readonly Label[]): ReadonlySet<number> {
  const kept = new Set<number>();
  const free = (k: number) => {
    const label = labels[k]!;
    return [...kept].every((other) => {
      const { px, widthPx } = labels[other]!;
      return Math.abs(px - label.px) >= (widthPx + label.widthPx) / 2 + gapPx;
    });
  };
  const keep = (k: number) => {
    if (!kept.has(k) && free(k)) kept.add(k);
  };
  labels.forEach(({ must }, k) => {
    if (must) keep(k);
  });
  for (const end of [0, labels.length - 1]) if (labels[end]) keep(end);
  const stride = strideOf(labels);
  labels.forEach((_, k) => {
    if (k % stride === 0) keep(k);
  });
  return kept;
}

function strideOf(labels: readonly Label[]): number {
  if (labels.length < 2) return 1;
  const stepPx = Math.abs(labels.at(-1)!.px - labels[0]!.px) / (labels.length - 1);
  // A label that must stand may be wider than the rest; it only displaces its neighbours.
  const usual = labels.filter(({ must }) => !must);
  const widest = Math.max(...(usual.length > 0 ? usual : labels).map(({ widthPx }) => widthPx)) + gapPx;
  return [1, 2, 5, 10, 20, 50, 100, 200, 500].find((stride) => stride * stepPx >= widest) ?? 1000;
}
