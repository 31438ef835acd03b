import { roundStep } from '../heights-axis.ts';

/** Steps of ink that one can count: what is lowest stays bare, each step up takes more. */
export interface TintSteps {
  /** Lower edge of the first step, µm. */
  readonly fromUm: number;
  readonly stepUm: number;
  readonly count: number;
}

/** As much as the eye can count. */
const mostSteps = 8;
/** What differs by less is level: no metal is measured so, and a step of it would be nought. */
const leastUm = 1e-9;
/** Full ink still lets words and lines be read on it. */
const fullInk = 0.46;

/** Round steps that hold all heights; none finer than the largest standard uncertainty. */
export function tintSteps(heightsUm: readonly number[], largestUUm: number): TintSteps {
  const [low, high] = [Math.min(...heightsUm), Math.max(...heightsUm)];
  if (!(high - low > leastUm))
    return { fromUm: heightsUm.length > 0 ? low : 0, stepUm: roundStep(Math.max(largestUUm, 0.1)), count: 1 };
  const stepUm = roundStep(Math.max((high - low) / (mostSteps - 1), largestUUm));
  const fromUm = Math.floor(low / stepUm + 1e-9) * stepUm;
  return { fromUm, stepUm, count: Math.max(1, Math.ceil((high - fromUm) / stepUm - 1e-9)) };
}

/** The step that a height lies in, 0 for bare. */
export function stepOf({ fromUm, stepUm, count }: TintSteps, heightUm: number): number {
  return Math.min(Math.max(Math.floor((heightUm - fromUm) / stepUm), 0), count - 1);
}

/** How much ink a step takes, 0 for bare. */
export function inkOf({ count }: TintSteps, step: number): number {
  return count > 1 ? (fullInk * step) / (count - 1) : 0;
}

/** The heights between the steps, where contour lines run. */
export function edgesUm({ fromUm, stepUm, count }: TintSteps): number[] {
  return Array.from({ length: count - 1 }, (_, k) => fromUm + (k + 1) * stepUm);
}
