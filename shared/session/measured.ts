import type { SheetInput } from '../sheet/sheet.ts';
import { type PlannedStation, placementKey, placementsOf, type Run } from '../survey/plan.ts';
import type { Session } from './fold.ts';

/** What of a survey hangs together so far. */
export interface Measured {
  /** The kind of sheet that this much of the survey can fill. */
  readonly kind: SheetInput['kind'];
  readonly stations: readonly PlannedStation[];
  readonly lines: Record<string, string[]>;
  /** Stations that were read but hang on nothing that joins them to the rest. */
  readonly loose: readonly string[];
  /** An artefact was swept in one position only. */
  readonly unturned: boolean;
}

/**
 * The largest set of stations that readings tie together, and the lines and the kind of sheet that they allow: a bed
 * of which one way is walked is a way; a plate of which one line is walked is one, too.
 */
export function measuredSoFar(session: Session): Measured {
  const { plan, setup } = session;
  const groups = tiedGroups(session);
  const largest = groups.reduce<ReadonlySet<string>>((a, b) => (b.size > a.size ? b : a), new Set());
  const stations = plan.stations.filter(({ name }) => largest.has(name));
  const loose = plan.stations.flatMap(({ name }) =>
    !largest.has(name) && groups.some((group) => group.has(name)) ? [name] : [],
  );
  const whole = Object.fromEntries(
    Object.entries(plan.lines)
      .map(([line, names]) => [line, names.filter((name) => largest.has(name))] as const)
      .filter(([, names]) => names.length >= 2),
  );
  const unturned = isUnturned(session);
  const common = { stations, loose, unturned };
  if (setup.kind === 'bed') {
    const lines = pairedLines(plan.lines, largest);
    if (Object.values(lines).every((names) => names.length >= 2)) return { ...common, kind: 'bed', lines };
    return { ...common, ...longestLine(stations, whole) };
  }
  if (setup.kind === 'plate' && areInLine(stations)) return { ...common, ...longestLine(stations, whole) };
  return { ...common, kind: setup.kind === 'straightedge' ? 'way' : setup.kind, lines: whole };
}

/** Sets of stations that readings tie together: the two feet of a level; all tips of one line's sweeps. */
function tiedGroups(session: Session): Set<string>[] {
  const groups: Set<string>[] = [];
  const tie = (names: readonly string[]) => {
    const joined = new Set(names);
    for (let k = groups.length - 1; k >= 0; k -= 1) {
      if (!names.some((name) => groups[k]!.has(name))) continue;
      for (const name of groups.splice(k, 1)[0]!) joined.add(name);
    }
    if (joined.size > 0) groups.push(joined);
  };
  // Heights of different faces hang on different offsets, but each is a figure of its own and none is left out.
  const tips: string[] = [];
  for (const run of session.plan.runs) {
    for (const at of takenOf(session, run)) {
      if (run.reads === 'tilt') tie(at);
      else tips.push(...at);
    }
  }
  tie(tips);
  return groups;
}

function takenOf(session: Session, run: Run): (readonly string[])[] {
  return placementsOf(run).flatMap((place) => (session.counted.has(placementKey(place)) ? [place.at] : []));
}

/** True when an artefact was swept in one of its two positions only, on any line that was swept at all. */
function isUnturned(session: Session): boolean {
  const seen = new Map<string, Set<boolean>>();
  for (const run of session.plan.runs) {
    if (run.reads !== 'height' || !run.artefact || takenOf(session, run).length === 0) continue;
    const { name, turned } = run.artefact;
    seen.set(name, (seen.get(name) ?? new Set()).add(turned));
  }
  return [...seen.values()].some((positions) => positions.size === 1);
}

/** The lines cut to the stations at which all of them are known, as a bed wants them. */
function pairedLines(lines: Readonly<Record<string, readonly string[]>>, known: ReadonlySet<string>) {
  const all = Object.values(lines);
  const complete = (k: number) => all.every((names) => known.has(names[k]!));
  return Object.fromEntries(
    Object.entries(lines).map(([line, names]) => [line, names.filter((_, k) => complete(k))]),
  );
}

function longestLine(stations: readonly PlannedStation[], lines: Record<string, string[]>) {
  const [line, names] = Object.entries(lines).reduce<[string, string[]]>(
    (a, b) => (b[1].length > a[1].length ? b : a),
    ['', []],
  );
  const on = new Set(names);
  return {
    kind: 'way' as const,
    lines: names.length > 0 ? { [line]: names } : {},
    stations: stations.filter(({ name }) => on.has(name)),
  };
}

function areInLine(stations: readonly PlannedStation[]): boolean {
  const [first, ...rest] = stations;
  if (!first) return true;
  const far = rest.reduce(
    (a, b) =>
      Math.hypot(b.xMm - first.xMm, b.yMm - first.yMm) > Math.hypot(a.xMm - first.xMm, a.yMm - first.yMm)
        ? b
        : a,
    first,
  );
  const [dx, dy] = [far.xMm - first.xMm, far.yMm - first.yMm];
  const length = Math.hypot(dx, dy);
  return rest.every(
    ({ xMm, yMm }) => Math.abs(dx * (yMm - first.yMm) - dy * (xMm - first.xMm)) <= 1e-6 * length ** 2,
  );
}
