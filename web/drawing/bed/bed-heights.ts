import { adjust } from '../../../shared/adjust/adjust.ts';
import type { AdjustedHeights } from '../../../shared/adjust/adjusted.ts';
import { isWayscribeError } from '../../../shared/errors.ts';
import { cornerPlane, type Lean, leansOf } from '../../../shared/figures/corner-plane.ts';
import { lineOf } from '../../../shared/figures/line.ts';
import { lineReference } from '../../../shared/figures/line-reference.ts';
import {
  departuresFrom,
  type Reference as HeightReference,
  type ReferenceKind,
} from '../../../shared/figures/reference.ts';
import type { Session } from '../../../shared/session/fold.ts';
import { toSheet } from '../../../shared/session/to-sheet.ts';
import { validateSheet } from '../../../shared/sheet/sheet.ts';
import type { ReducedStation } from '../../state/survey-result.ts';
import { exactHeights } from './exact-heights.ts';
import { leansOfReadings } from './lean-readings.ts';

/** Both ways of a bed as they stand over one reference. */
export interface BedHeights {
  readonly front: readonly ReducedStation[];
  readonly rear: readonly ReducedStation[];
  /** The three corners of the plane that both ways are over; null when each is over a line of its own. */
  readonly corners: readonly [string, string, string] | null;
  /** How each pair leans against the first one: by all readings, or while they don't tie both ways, by those across. */
  readonly leans: readonly Lean[];
}

const remembered = new WeakMap<Session['counted'], Map<ReferenceKind, BedHeights>>();

/**
 * What is known of the two ways so far. Against `ends` both stand over the plane through three corners, so that the
 * wind is seen in the fourth; against the other references, and while one way hangs on nothing yet, each stands
 * over its own line. Remembered per set of takes.
 */
export function bedHeights(session: Session, reference: ReferenceKind): BedHeights {
  const known = remembered.get(session.counted) ?? new Map<ReferenceKind, BedHeights>();
  remembered.set(session.counted, known);
  const found = known.get(reference) ?? measured(session, reference);
  known.set(reference, found);
  return found;
}

/**
 * The true heights of a simulated bed over the same reference, at the stations that are known.
 * @param truthUm by station, µm, in any datum
 */
export function trueBedHeights(
  session: Session,
  reference: ReferenceKind,
  truthUm: Readonly<Record<string, number>>,
): BedHeights {
  const { front, rear } = bedHeights(session, reference);
  const names = new Set([...front, ...rear].map(({ name }) => name));
  const stations = session.plan.stations.filter(({ name }) => names.has(name));
  return over(session, reference, exactHeights(stations, truthUm));
}

function measured(session: Session, reference: ReferenceKind): BedHeights {
  const alone = { front: [], rear: [], corners: null, leans: leansOfReadings(session) };
  if (session.counted.size === 0) return alone;
  try {
    return over(session, reference, adjust(validateSheet(toSheet(session))).heights);
  } catch (error) {
    if (isWayscribeError(error)) return alone;
    throw error;
  }
}

function over(session: Session, reference: ReferenceKind, adjusted: AdjustedHeights): BedHeights {
  const { front = [], rear = [] } = session.plan.lines;
  const indexOf = new Map(adjusted.names.map((name, k) => [name, k]));
  const known = (names: readonly string[]) => names.flatMap((name) => indexOf.get(name) ?? []);
  const [first, second] = [known(front), known(rear)];
  const pairs = front.flatMap((name, k): [number, number][] => {
    const [from, to] = [indexOf.get(name), indexOf.get(rear[k] ?? '')];
    return from === undefined || to === undefined ? [] : [[from, to]];
  });
  const leans = pairs.length > 1 ? leansOf(adjusted, pairs) : leansOfReadings(session);
  if (reference === 'ends' && first.length >= 2 && second.length >= 1) {
    const plane = cornerPlane(adjusted, { stations: first }, { stations: second });
    const all = stationsOver(adjusted, plane);
    const corner = (k: number | undefined) => adjusted.names[k!]!;
    return {
      front: all.slice(0, first.length),
      rear: all.slice(first.length),
      corners: [corner(first[0]), corner(first.at(-1)), corner(second[0])],
      leans,
    };
  }
  const alone = (stations: readonly number[]) =>
    stations.length < 2 ? [] : stationsOver(adjusted, lineReference(reference, lineOf(adjusted, stations)));
  return { front: alone(first), rear: alone(second), corners: null, leans };
}

function stationsOver(adjusted: AdjustedHeights, reference: HeightReference): ReducedStation[] {
  const { heightUm, uUm } = departuresFrom(adjusted, reference);
  return Array.from(reference.stations, (k, i) => ({
    name: adjusted.names[k]!,
    xMm: adjusted.xMm[k]!,
    heightUm: heightUm[i]!,
    uUm: uUm[i]!,
  }));
}
