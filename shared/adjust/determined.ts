import { WayscribeError } from '../errors.ts';
import type { Factor } from './factor.ts';
import type { Nuisance, Observations } from './observations.ts';
import { beyondPlane, mixedUnseenChange, unseenChange } from './unseen.ts';

/** Heights that bend by less than this share of an unseen change do not bend at all, but for rounding. */
const bendTolerance = 1e-6;
/** When naming what cannot be told apart, look at so many held unknowns one by one. */
const mostExamined = 100;

/**
 * Proves that what the readings cannot see is no more than a plane (or a constant) over each part.
 *
 * @returns whether each nuisance unknown is determined by the readings, in the order of the nuisances.
 * @throws WayscribeError `adjust.notDetermined`, saying which unknowns look alike and what would cure it.
 */
export function checkDetermined(
  observations: Observations,
  factor: Factor,
  parts: Int32Array,
  shape: 'constant' | 'plane',
): boolean[] {
  // Pure differences leave one constant for each part unseen, and nothing else.
  if (factor.held.length === 0 || observations.pureDifferences) return observations.nuisances.map(() => true);
  const bends = (change: Float64Array) => bend(observations, factor, change, parts, shape);
  const mixed = mixedUnseenChange(observations, factor);
  if (bends(mixed)) {
    const single = factor.held
      .slice(0, mostExamined)
      .map((place) => unseenChange(observations, factor, [place], [1]))
      .find(bends);
    throw notDetermined(observations, factor, single ?? mixed, parts, shape);
  }
  return nuisanceChanges(observations, factor, mixed).map((size) => size <= bendTolerance);
}

function heightsOf({ stationNames }: Observations, { fronts }: Factor, change: Float64Array): Float64Array {
  return Float64Array.from(stationNames, (_, k) => change[fronts.placeOf[k]!]!);
}

/** Size of the change of each nuisance unknown, as share of the largest. */
function nuisanceChanges(
  { stationNames, nuisances }: Observations,
  { fronts }: Factor,
  change: Float64Array,
) {
  const largest = largestOf(change);
  return nuisances.map((_, k) => Math.abs(change[fronts.placeOf[stationNames.length + k]!]!) / largest);
}

function largestOf(values: Float64Array): number {
  return values.reduce((largest, value) => Math.max(largest, Math.abs(value)), 0);
}

function bend(
  observations: Observations,
  factor: Factor,
  change: Float64Array,
  parts: Int32Array,
  shape: 'constant' | 'plane',
): boolean {
  const heights = heightsOf(observations, factor, change);
  const left = largestOf(beyondPlane(heights, observations, parts, shape));
  return left > bendTolerance * largestOf(heights) && left > 1e-9 * largestOf(change);
}

function notDetermined(
  observations: Observations,
  factor: Factor,
  change: Float64Array,
  parts: Int32Array,
  shape: 'constant' | 'plane',
): WayscribeError {
  const sizes = nuisanceChanges(observations, factor, change);
  const involved = observations.nuisances.filter((_, k) => sizes[k]! > bendTolerance);
  const left = beyondPlane(heightsOf(observations, factor, change), observations, parts, shape);
  const most = largestOf(left);
  const bent = observations.stationNames.filter((_, k) => Math.abs(left[k]!) > 0.5 * most);
  const place = `stations ${listed(bent)}`;
  if (involved.length === 0) {
    return new WayscribeError(
      'adjust.notDetermined',
      place,
      'these are tied so weakly, beside the weight of the other readings, that nothing can be told of them',
      'mend the sigmas, bases or coordinates, or add a reading',
    );
  }
  const heights = shape === 'plane' ? 'the shape of the surface' : 'the slope or shape of the surface';
  return new WayscribeError(
    'adjust.notDetermined',
    place,
    `the readings cannot tell ${heights} from ${[...new Set(involved.map(named))].slice(0, 6).join(', ')}`,
    cure(involved, shape),
  );
}

function listed(names: readonly string[]): string {
  return names.slice(0, 6).join(', ') + (names.length > 6 ? ' …' : '');
}

function named({ kind, of }: Nuisance): string {
  switch (kind) {
    case 'zero':
      return `the zero of "${of}"`;
    case 'drift':
      return `the drift of walk "${of}"`;
    case 'offset':
      return `the offset of sweep "${of}"`;
    case 'slope':
      return `the slope of sweep "${of}"`;
    case 'artefact':
      return `the error of "${of}"`;
  }
}

/** The reading that would tell them apart; the rarest kind of unknown among those involved decides. */
function cure(involved: readonly Nuisance[], shape: 'constant' | 'plane'): string {
  const has = (kind: Nuisance['kind']) => involved.some((unknown) => unknown.kind === kind);
  if (has('artefact')) {
    return 'sweep every station both with the artefact turned and unturned, from the same slope';
  }
  if (has('drift')) {
    return 'walk out and back with the level facing the same way and one shared zero, or leave the drift out';
  }
  if (shape === 'constant' && has('slope')) {
    return 'take the slope of the sweep as known where the motion of the slide is the reference';
  }
  if (has('zero')) {
    return 'let the walks share one zero, turn the level end for end, or add readings that cross elsewhere';
  }
  return 'add a reading that joins these stations to others';
}
