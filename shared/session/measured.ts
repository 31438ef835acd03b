import type { SheetInput } from '../sheet/sheet.ts';
import { type Plan, type PlannedStation, placementKey } from '../survey/plan.ts';
import type { Session } from './fold.ts';
import type { TakenRun } from './taken-run.ts';

/** What of a survey hangs together so far. */
export interface Measured {
  /** The kind of sheet that this much of the survey can fill. */
  readonly kind: SheetInput['kind'];
  readonly stations: readonly PlannedStation[];
  readonly lines: Record<string, string[]>;
}

/**
 * The stations that these takes tie together, and the lines and the kind of sheet that they allow: a
 * bed of which one way is walked is a way; a plate of which one line is walked is one, too.
 */
export function measured(session: Session, taken: readonly TakenRun[]): Measured {
  const { plan, setup } = session;
  const largest = bestGroup(plan, taken);
  const stations = plan.stations.filter(({ name }) => largest.has(name));
  const lines = Object.fromEntries(
    Object.entries(plan.lines)
      .map(([line, names]) => [line, names.filter((name) => largest.has(name))] as const)
      .filter(([, names]) => names.length >= 2),
  );
  if (setup.kind === 'bed') {
    const paired = pairedLines(plan.lines, largest);
    return isBed(session, paired, lines)
      ? { kind: 'bed', stations, lines: paired }
      : wayAlone(session, taken);
  }
  if (setup.kind === 'plate' && areInLine(stations)) return wayAlone(session, taken);
  return { kind: setup.kind === 'straightedge' ? 'way' : setup.kind, stations, lines };
}

/**
 * Stations that readings tie together: of all such sets, the one that holds most of a line. Each face or plane that an
 * indicator was swept along is a figure of its own, so of sweeps the best set of every line is taken.
 */
function bestGroup(plan: Plan, taken: readonly TakenRun[]): ReadonlySet<string> {
  const lines = Object.values(plan.lines).map((names) => new Set(names));
  const tilts = taken.filter(({ run }) => run.reads === 'tilt');
  const onLine = (group: ReadonlySet<string>, line: ReadonlySet<string>) =>
    [...group].filter((name) => line.has(name)).length;
  const best = (groups: readonly Set<string>[], worth: (group: Set<string>) => number) =>
    groups.reduce<Set<string>>((a, b) => (worth(b) > worth(a) ? b : a), new Set());
  if (tilts.length > 0) {
    const places = tilts.flatMap(({ takes }) => takes.map(({ place }) => place.at));
    // Among sets of equal lines the larger one.
    return best(groupsOf(places), (group) => {
      return Math.max(...lines.map((line) => onLine(group, line))) + group.size / (1 + plan.stations.length);
    });
  }
  const groups = groupsOf(taken.map(({ takes }) => takes.flatMap(({ place }) => place.at)));
  return new Set(
    lines.flatMap((line) => {
      const group = best(groups, (one) => onLine(one, line));
      return onLine(group, line) >= 2 ? [...group] : [];
    }),
  );
}

/** The sets that hold together when all names of each list belong to one set. */
function groupsOf(lists: readonly (readonly string[])[]): Set<string>[] {
  const groups: Set<string>[] = [];
  for (const names of lists) {
    const joined = new Set(names);
    for (let k = groups.length - 1; k >= 0; k -= 1) {
      if (!names.some((name) => groups[k]!.has(name))) continue;
      for (const name of groups.splice(k, 1)[0]!) joined.add(name);
    }
    if (joined.size > 0) groups.push(joined);
  }
  return groups;
}

/**
 * While a bed is still walked, its ways become a bed only when that cuts none of them short: the profile that has grown
 * so far stays whole.
 */
function isBed(
  session: Session,
  paired: Record<string, readonly string[]>,
  whole: Record<string, readonly string[]>,
): boolean {
  const pairs = Math.min(...Object.values(paired).map((names) => names.length));
  const longest = Math.max(...Object.values(whole).map((names) => names.length));
  const done = session.placements.every((place) => {
    const key = placementKey(place);
    return session.counted.has(key) || session.skipped.has(key);
  });
  return pairs >= 2 && (done || pairs === longest);
}

/** The lines cut to the stations at which all of them are known, as a bed wants them. */
function pairedLines(lines: Readonly<Record<string, readonly string[]>>, known: ReadonlySet<string>) {
  const all = Object.values(lines);
  const complete = (k: number) => all.every((names) => known.has(names[k]!));
  return Object.fromEntries(
    Object.entries(lines).map(([line, names]) => [line, names.filter((_, k) => complete(k))]),
  );
}

/** The longest stretch of one line that the readings along it tie together. */
function wayAlone({ plan }: Session, taken: readonly TakenRun[]): Measured {
  const places = taken.flatMap(({ takes }) => takes.map(({ place }) => place.at));
  const stretches = Object.entries(plan.lines).flatMap(([line, names]) => {
    const on = new Set(names);
    const along = places.filter((feet) => feet.every((name) => on.has(name)));
    return groupsOf(along).map((group) => [line, names.filter((name) => group.has(name))] as const);
  });
  const [line, names] = stretches.reduce<readonly [string, string[]]>(
    (a, b) => (b[1].length > a[1].length ? b : a),
    ['', []],
  );
  return {
    kind: 'way',
    lines: names.length > 0 ? { [line]: names } : {},
    stations: plan.stations.filter(({ name }) => names.includes(name)),
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
