import { WayscribeError } from '../errors.ts';
import type { Sheet } from '../sheet/schema.ts';
import type { AdjustedHeights } from './adjusted.ts';
import { checkDetermined } from './determined.ts';
import { dissect } from './dissection.ts';
import { type Factor, factorise } from './factor.ts';
import { type Fit, fitOf } from './fit.ts';
import { frontsOf } from './fronts.ts';
import { minusTransposedTimes, rowsTimes } from './normal.ts';
import { type Observations, observe } from './observations.ts';
import { selectedInverse } from './selected-inverse.ts';
import { solveInPlace } from './solve.ts';
import { findSuspect, redundancyOf, standardise } from './suspect.ts';
import { checkTied, partsOf } from './tied.ts';

/** The adjustment of a sheet: heights, what is known of the readings, and how well it all fits. */
export interface Adjustment {
  readonly heights: AdjustedHeights;
  readonly observations: Observations;
  /** By row of the observations: adjusted less observed, µm/m or µm. */
  readonly residual: Float64Array;
  /** By row: 0, nothing checks this reading, to 1, the others check it fully. */
  readonly redundancy: Float64Array;
  /** By row: residual/(σ·√redundancy), σ scaled where `fit.sigmaScaled`; NaN where redundancy is 0. */
  readonly standardised: Float64Array;
  /** Row of the one suspect reading, -1 for none. */
  readonly suspect: number;
  /** Other rows whose standardised residual is as large as that of the suspect. */
  readonly suspectTies: readonly number[];
  /** Zeros that the readings determine, µm/m. */
  readonly zeros: readonly { readonly name: string; readonly value: number; readonly u: number }[];
  /** Zeros that the readings cannot tell from a tilt of the surface. */
  readonly freeZeros: readonly string[];
  /** The part each station belongs to; stations of one part are tied together. */
  readonly parts: Int32Array;
  readonly fit: Fit;
  /**
   * How much each reading counts in the combination Σ c_j·h_j, by row: µm for each µm/m, or for each µm, more that it
   * had read. `c` has one entry a station and depends on no datum.
   */
  weightsIn(c: Float64Array): Float64Array;
}

/** Shares of an unknown's own weight below which a pivot is rounding: the usual one, and wider ones. */
const rankTolerance = 1e-11;
const widerTolerances = [1e-10, 1e-9, 1e-8, 1e-7];

/** The shares of the readings that a sound adjustment explains miss their sum by less than this. */
const mostRounding = 1e-4;

/** Kinds whose figures stand by line and keep their slope: only a constant may stay unseen. */
const slopeMatters: ReadonlySet<Sheet['kind']> = new Set([
  'slide',
  'square',
  'bar',
  'dovetail',
  'repeat',
  'collars',
]);

/**
 * Adjusts a proved sheet by weighted least squares.
 *
 * @throws WayscribeError `adjust.notTied`, `adjust.notDetermined` or `sheet.tooLarge`.
 */
export function adjust(sheet: Sheet): Adjustment {
  const observations = observe(sheet);
  const byLine = slopeMatters.has(sheet.kind);
  const parts = partsOf(observations);
  checkTied(observations, parts, sheet.lines, byLine);

  const { factor, inverse, sound } = soundFactor(observations);
  const determined = checkDetermined(observations, factor, parts, byLine ? 'constant' : 'plane');
  if (!sound) throw roundingWon();
  const x = solve(observations, factor);
  const misfit = rowsTimes(observations, factor.fronts, x, observations.observed);
  const { variance, explained } = inverse;

  const fit = fitOf(sheet, observations, factor.held.length, misfit);
  const scale = fit.sigmaScaled ? fit.s0! : 1;
  const redundancy = redundancyOf(explained);
  const standardised = standardise(misfit, redundancy, scale, observations.observed);
  const { suspect, suspectTies } = findSuspect(standardised);
  return {
    heights: heightsOf(observations, factor, x, variance, scale),
    observations,
    residual: misfit.map((v, r) => v * observations.sigma[r]!),
    redundancy,
    standardised,
    suspect,
    suspectTies,
    ...zerosOf(observations, factor, determined, x, variance, scale),
    parts,
    fit,
    weightsIn(c) {
      const b = new Float64Array(factor.inversePivot.length);
      for (let k = 0; k < c.length; k++) b[factor.fronts.placeOf[k]!] = c[k]!;
      solveInPlace(factor, b);
      return rowsTimes(observations, factor.fronts, b).map((row, r) => row / observations.sigma[r]!);
    },
  };
}

/**
 * The factor whose shares of the readings add up to its rank, as they must whatever was read. Where readings of unlike
 * weight meet, rounding can leave a pivot that should be nothing; then a wider tolerance finds it.
 */
function soundFactor(observations: Observations) {
  const fronts = frontsOf(observations, dissect(observations));
  const attempt = (tolerance: number) => {
    const factor = factorise(observations, fronts, tolerance);
    const inverse = selectedInverse(observations, factor);
    const rank = factor.inversePivot.length - factor.held.length;
    const explained = inverse.explained.reduce((total, share) => total + share, 0);
    const sound = rank <= observations.count && Math.abs(explained - rank) <= mostRounding;
    return { factor, inverse, sound };
  };
  const first = attempt(rankTolerance);
  if (first.sound) return first;
  for (const tolerance of widerTolerances) {
    const next = attempt(tolerance);
    if (next.sound) return next;
  }
  return first;
}

function roundingWon(): WayscribeError {
  return new WayscribeError(
    'adjust.notDetermined',
    'sigmas and bases',
    'some readings weigh so much more than others that rounding hides what the others say',
    'mend the sigmas, the bases or the coordinates',
  );
}

/** The unknowns by place, refined once against the rows themselves. */
function solve(observations: Observations, factor: Factor): Float64Array {
  const { fronts } = factor;
  const x = new Float64Array(factor.inversePivot.length);
  for (let round = 0; round < 2; round++) {
    const misfit = rowsTimes(observations, fronts, x, observations.observed);
    const step = minusTransposedTimes(observations, fronts, misfit);
    solveInPlace(factor, step);
    for (let k = 0; k < x.length; k++) x[k]! += step[k]!;
  }
  return x;
}

function heightsOf(
  { stationNames, xMm, yMm }: Observations,
  factor: Factor,
  x: Float64Array,
  variance: Float64Array,
  scale: number,
): AdjustedHeights {
  const { placeOf } = factor.fronts;
  const byStation = (values: Float64Array, times: number) => {
    const result = new Float64Array(stationNames.length);
    for (let k = 0; k < result.length; k++) result[k] = values[placeOf[k]!]! * times;
    return result;
  };
  return {
    names: stationNames,
    xMm,
    yMm,
    heightUm: byStation(x, 1),
    varianceUm2: byStation(variance, scale * scale),
    covarianceWith(c) {
      const b = new Float64Array(variance.length);
      for (let k = 0; k < stationNames.length; k++) b[placeOf[k]!] = c[k]!;
      solveInPlace(factor, b);
      return byStation(b, scale * scale);
    },
  };
}

function zerosOf(
  { nuisances, stationNames }: Observations,
  { fronts }: Factor,
  determined: readonly boolean[],
  x: Float64Array,
  variance: Float64Array,
  scale: number,
): Pick<Adjustment, 'zeros' | 'freeZeros'> {
  const all = nuisances.flatMap(({ kind, of }, k) => {
    if (kind !== 'zero') return [];
    const place = fronts.placeOf[stationNames.length + k]!;
    const u = Math.sqrt(variance[place]!) * scale;
    return [{ name: of, value: x[place]!, u, known: determined[k]! }];
  });
  return {
    zeros: all.filter(({ known }) => known).map(({ name, value, u }) => ({ name, value, u })),
    freeZeros: all.filter(({ known }) => !known).map(({ name }) => name),
  };
}
