import type { Sheet } from '../sheet/schema.ts';
import { unitFactor } from '../units.ts';
import { gravityAdds, horizonUm } from './gravity.ts';

/** An unknown beside the heights of the stations. */
export interface Nuisance {
  readonly kind: 'zero' | 'drift' | 'offset' | 'slope' | 'artefact';
  /** Name of the zero, the walk, the sweep or the artefact. */
  readonly of: string;
  /** The station at which an artefact's error stands. */
  readonly station?: number;
}

/**
 * A sheet as weighted linear equations, in internal units (heights µm, slopes µm/m, lengths mm).
 *
 * Unknown k < stations is the height of station k; the nuisance unknowns follow. Each row touches at most
 * four unknowns (-1 fills up) and is divided by its sigma, so that every row has unit weight:
 *
 * - tilt:   reading = facing·(h_to − h_from)/base + zero + drift·τ, τ from 0 to 1 along the walk;
 * - height: reading = sense·h + offset + slope·distance ± artefact, the distance from the first station.
 */
export interface Observations {
  readonly stationNames: readonly string[];
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  readonly nuisances: readonly Nuisance[];
  readonly count: number;
  /** 4 per row. */
  readonly unknown: Int32Array;
  /** 4 per row: coefficient / sigma. */
  readonly coefficient: Float64Array;
  /** Reading / sigma. */
  readonly observed: Float64Array;
  /** Standard deviation, µm/m or µm. */
  readonly sigma: Float64Array;
  /** The group the row came from: a walk, or, counted on after the walks, a sweep. */
  readonly group: Int32Array;
  /** Index of the row's reading within its group. */
  readonly reading: Int32Array;
  /** Whether every row is a difference of two heights and nothing else. */
  readonly pureDifferences: boolean;
  /** Whether the curve of the horizon was taken out of the tilts. */
  readonly gravityCorrected: boolean;
}

export const rowWidth = 4;
/** A slope in µm/m over a distance in mm is this many µm. */
const umPerSlopeMm = 1e-3;

/** The rows of a sheet, walks before sweeps, in the order of the sheet; skipped readings make none. */
export function observe(sheet: Sheet): Observations {
  const stationNames = Object.keys(sheet.stations);
  const indexOf = new Map(stationNames.map((name, index) => [name, index]));
  const lengthFactor = unitFactor('length', sheet.units.length);
  const tiltFactor = unitFactor('tilt', sheet.units.tilt);
  const heightFactor = unitFactor('height', sheet.units.height);
  const xMm = new Float64Array(stationNames.length);
  const yMm = new Float64Array(stationNames.length);
  Object.values(sheet.stations).forEach(([x, y], k) => {
    xMm[k] = x * lengthFactor;
    yMm[k] = y * lengthFactor;
  });
  const gravityCorrected = sheet.walks.length > 0 && gravityAdds(sheet.gravityCurvature, xMm, yMm);
  const horizon = gravityCorrected ? horizonUm(xMm, yMm) : undefined;

  const capacity = [...sheet.walks, ...sheet.sweeps].reduce((sum, { readings }) => sum + readings.length, 0);
  const unknown = new Int32Array(rowWidth * capacity).fill(-1);
  const coefficient = new Float64Array(rowWidth * capacity);
  const observed = new Float64Array(capacity);
  const sigma = new Float64Array(capacity);
  const group = new Int32Array(capacity);
  const reading = new Int32Array(capacity);
  let count = 0;
  let pureDifferences = true;

  const nuisances: Nuisance[] = [];
  const add = (nuisance: Nuisance): number => stationNames.length + nuisances.push(nuisance) - 1;
  const zeros = new Map<string, number>();
  const artefacts = new Map<string, Int32Array>();
  const distanceMm = (a: number, b: number) => {
    const [dx, dy] = [xMm[b]! - xMm[a]!, yMm[b]! - yMm[a]!];
    return Math.sqrt(dx * dx + dy * dy);
  };

  /** By station, the unknown error of an artefact there; -1 where none is needed yet. */
  const errorsOf = (artefact: string): Int32Array => {
    const errors = artefacts.get(artefact) ?? new Int32Array(stationNames.length).fill(-1);
    artefacts.set(artefact, errors);
    return errors;
  };

  /** Sets entry `slot` of the row under way. */
  const put = (slot: number, index: number, value: number) => {
    unknown[rowWidth * count + slot] = index;
    coefficient[rowWidth * count + slot] = value / sigma[count]!;
  };

  sheet.walks.forEach((walk, groupIndex) => {
    const rowSigma = (walk.sigma ?? 1) * tiltFactor;
    const steps = walk.readings.length - 1;
    const zeroName = walk.zero === 'free' ? walk.id : walk.zero;
    const zero = onFirstUse(() => {
      const index = zeros.get(zeroName) ?? add({ kind: 'zero', of: zeroName });
      zeros.set(zeroName, index);
      return index;
    });
    const drift = onFirstUse(() => add({ kind: 'drift', of: walk.id }));
    walk.readings.forEach(([from, to, value], index) => {
      if (value === null) return;
      const a = indexOf.get(from)!;
      const b = indexOf.get(to)!;
      const baseMm = distanceMm(a, b);
      const rise = horizon ? (horizon[b]! - horizon[a]!) / (baseMm * umPerSlopeMm) : 0;
      sigma[count] = rowSigma;
      observed[count] = (value * tiltFactor + walk.facing * rise) / rowSigma;
      const perHeight = walk.facing / (baseMm * umPerSlopeMm);
      put(0, a, -perHeight);
      put(1, b, perHeight);
      if (walk.zero !== 'known') put(2, zero(), 1);
      if (walk.drift) put(3, drift(), steps > 0 ? index / steps : 0);
      if (walk.zero !== 'known' || walk.drift) pureDifferences = false;
      group[count] = groupIndex;
      reading[count++] = index;
    });
  });

  sheet.sweeps.forEach((sweep, sweepIndex) => {
    const rowSigma = (sweep.sigma ?? 1) * heightFactor;
    const first = sweep.readings[0] && indexOf.get(sweep.readings[0][0])!;
    const offset = onFirstUse(() => add({ kind: 'offset', of: sweep.id }));
    const slope = onFirstUse(() => add({ kind: 'slope', of: sweep.id }));
    const errors = sweep.artefact === undefined ? undefined : errorsOf(sweep.artefact);
    sweep.readings.forEach(([station, value], index) => {
      if (value === null || first === undefined) return;
      const k = indexOf.get(station)!;
      sigma[count] = rowSigma;
      observed[count] = (value * heightFactor) / rowSigma;
      put(0, k, sweep.sense);
      if (errors && sweep.artefact !== undefined) {
        if (errors[k]! < 0) errors[k] = add({ kind: 'artefact', of: sweep.artefact, station: k });
        put(1, errors[k]!, sweep.turned ? -1 : 1);
      }
      if (sweep.offset === 'free') put(2, offset(), 1);
      if (sweep.slope === 'free') put(3, slope(), distanceMm(first, k) * umPerSlopeMm);
      pureDifferences = false;
      group[count] = sheet.walks.length + sweepIndex;
      reading[count++] = index;
    });
  });

  return {
    stationNames,
    xMm,
    yMm,
    nuisances,
    count,
    unknown: unknown.subarray(0, rowWidth * count),
    coefficient: coefficient.subarray(0, rowWidth * count),
    observed: observed.subarray(0, count),
    sigma: sigma.subarray(0, count),
    group: group.subarray(0, count),
    reading: reading.subarray(0, count),
    pureDifferences,
    gravityCorrected,
  };
}

/** An unknown that is made only when a reading needs it. */
function onFirstUse(make: () => number): () => number {
  let index = -1;
  return () => {
    if (index < 0) index = make();
    return index;
  };
}
