import { noiseOf } from './noise.ts';
import type { Proving } from './proving.ts';
import { allowed, stepInCounts, uScale } from './scale.ts';
import { coverage } from './verdict.ts';

/** Why a known step can prove nothing, whatever will be read, and what would do, µm; null where nothing does. */
export type Unprovable =
  | { readonly is: 'too-small'; readonly feelerUm: number | null; readonly blockUm: number | null }
  | { readonly is: 'too-large'; readonly mostUm: number };

/** Largest step that is looked for as a remedy, µm. */
const mostUm = 1e5;

/** Share of its range that a step may take: it does not stand at the very end of it before. */
const ofRange = 0.9;

/**
 * Whether the known step could prove the scale of an instrument that is right: told to a tenth, and within its range.
 * @param heard what is known of its needle already, as it reads
 * @returns null when it can
 */
export function unprovable(
  proving: Proving,
  heard: { readonly noise?: number; readonly range?: readonly [number, number] | undefined } = {},
): Unprovable | null {
  const noise = Math.max(noiseOf(proving), heard.noise ?? 0);
  const { range } = heard;
  if (range) {
    const most = ofRange * (range[1] - range[0]);
    const counts = stepInCounts(proving);
    if (counts > most) return { is: 'too-large', mostUm: (proving.stepUm * most) / counts };
  }
  if (isSure(proving, noise)) return null;
  const least = (stepIs: Proving['stepIs']) => leastStep({ ...proving, stepIs }, noise);
  return { is: 'too-small', feelerUm: least('feeler'), blockUm: least('block') };
}

function isSure(proving: Proving, noise: number): boolean {
  return coverage * uScale(proving, 1, noise) <= allowed;
}

/** The smallest step that would do, µm, by halving: the larger the step, the surer it is. */
function leastStep(proving: Proving, noise: number): number | null {
  const does = (stepUm: number) => isSure({ ...proving, stepUm }, noise);
  if (!does(mostUm)) return null;
  let [low, high] = [0, mostUm];
  while (high - low > 1e-4 * high) {
    const middle = (low + high) / 2;
    if (does(middle)) high = middle;
    else low = middle;
  }
  return high;
}
