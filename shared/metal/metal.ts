import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { WayscribeError } from '../errors.ts';
import { departureHeights, departuresFrom, type Reference } from '../figures/reference.ts';
import { type Pass, passesFor, planPasses } from './passes.ts';

/** The wished surface and how it is scraped. Heights in µm; a crown is proud in the middle, a hollow low. */
export interface TargetSpec {
  readonly shape: 'flat' | 'crown' | 'hollow';
  /** Height of the crown or depth of the hollow at mid-length, µm, not negative. */
  readonly crownUm: number;
  /** `fixed`: the target stays parallel to the reference in use; `free`: it may lie as it likes. */
  readonly tilt: 'free' | 'fixed';
  /** Depth of one scraping pass, µm. */
  readonly biteUm: number;
  /** Last passes that are left to the blue. */
  readonly stopPasses: number;
}

/** What is to come off at a station. */
export interface Removal {
  readonly removeUm: number;
  readonly uUm: number;
  readonly passes: number;
  /** False where the removal is less than twice its own standard uncertainty. */
  readonly worthAStroke: boolean;
}

/** Where a flat plate laid on the metal would rest and what would take its ink. */
export interface Contact {
  readonly restsOn: readonly string[];
  readonly inked: readonly string[];
}

/** The suggestion for one line or plate: removal by station, pass by pass, and the print to expect now. */
export interface Metal {
  readonly target: string;
  readonly stations: Readonly<Record<string, Removal>>;
  readonly plan: readonly Pass[];
  readonly contact: Contact;
}

/** Thickness of a rolled-on film of marking ink, µm: 0.0001 in by shop talk (common practice, no source). */
export const INK_FILM_UM = 2.5;

const COVERAGE = 2;
/** More bites than this cannot be counted one by one. */
const MOST_BITES = 1e12;
/** Of the largest height: a removal or gap below it is rounding. */
const TOUCHES = 1e-11;

/** What the metal is to come down to: nowhere above it. */
export interface Target {
  /** The straight part of the target, made of the metal's own heights. */
  readonly surface: Reference;
  /** By station of the surface, how far the metal stands above the target with its shape, µm. */
  readonly aboveUm: Float64Array;
}

/**
 * Removal, passes and contact from two surfaces: the target, nowhere above the metal, and `resting`, nowhere below it.
 * Throws `sheet.invalid` for a bite so small that its passes cannot be counted.
 */
export function metalBetween(
  adjusted: AdjustedHeights,
  { surface, aboveUm }: Target,
  resting: Reference,
  spec: TargetSpec,
): Metal {
  const names = Array.from(surface.stations, (k) => adjusted.names[k]!);
  // The wished shape is without error: uncertain is only where the metal stands against the straight part.
  const { uUm } = departuresFrom(adjusted, surface);
  const touching = TOUCHES * largest(adjusted.heightUm);
  const removals = Array.from(aboveUm, (height, i): Removal => {
    const removeUm = height > touching ? height : 0;
    if (removeUm / spec.biteUm > MOST_BITES) throw biteTooSmall(removeUm, spec.biteUm);
    return {
      removeUm,
      uUm: uUm[i]!,
      passes: passesFor(removeUm, spec.biteUm),
      worthAStroke: removeUm > 0 && removeUm >= COVERAGE * uUm[i]!,
    };
  });
  return {
    target: targetWord(spec),
    stations: Object.fromEntries(removals.map((removal, i) => [names[i]!, removal])),
    plan: planPasses(
      names,
      removals.map((removal) => removal.passes),
      spec.stopPasses,
    ),
    contact: contactUnder(adjusted, resting, names),
  };
}

function biteTooSmall(removeUm: number, biteUm: number): WayscribeError {
  return new WayscribeError(
    'sheet.invalid',
    'target.biteUm',
    `${removeUm.toPrecision(2)} µm cannot be scraped in bites of ${biteUm} µm`,
    'give what one pass takes off, about 5 µm',
  );
}

function contactUnder(adjusted: AdjustedHeights, resting: Reference, names: readonly string[]): Contact {
  const gaps = departureHeights(adjusted, resting).map((height) => -height);
  const touching = TOUCHES * largest(adjusted.heightUm);
  return {
    restsOn: names.filter((_, i) => gaps[i]! <= touching),
    inked: names.filter((_, i) => gaps[i]! <= INK_FILM_UM + touching),
  };
}

function targetWord({ shape, crownUm }: TargetSpec): string {
  return shape === 'flat' || crownUm === 0 ? 'flat' : shape;
}

/**
 * The wished shape over the length, µm: 4c·x(L − x)/L² for a crown of c at mid-length, the reverse for a
 * hollow, nothing for flat. `alongMm` may start anywhere.
 */
export function wishedShape(spec: TargetSpec, alongMm: ArrayLike<number>): Float64Array {
  const c = spec.shape === 'flat' ? 0 : spec.shape === 'crown' ? spec.crownUm : -spec.crownUm;
  let start = Number.POSITIVE_INFINITY;
  let end = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < alongMm.length; i++) {
    start = Math.min(start, alongMm[i]!);
    end = Math.max(end, alongMm[i]!);
  }
  const length = end - start;
  if (c === 0 || length === 0) return new Float64Array(alongMm.length);
  return Float64Array.from(alongMm, (x) => (4 * c * (x - start) * (end - x)) / length ** 2);
}

/** The same survey with `offUm[i]` taken off the height of `stations[i]`. Covariances stay as they are. */
export function takenOff(
  adjusted: AdjustedHeights,
  stations: ArrayLike<number>,
  offUm: Float64Array,
): AdjustedHeights {
  const heightUm = adjusted.heightUm.slice();
  for (let i = 0; i < stations.length; i++) heightUm[stations[i]!] = heightUm[stations[i]!]! - offUm[i]!;
  return {
    names: adjusted.names,
    xMm: adjusted.xMm,
    yMm: adjusted.yMm,
    heightUm,
    varianceUm2: adjusted.varianceUm2,
    covarianceWith: (c) => adjusted.covarianceWith(c),
  };
}

function largest(values: Float64Array): number {
  return values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
}
