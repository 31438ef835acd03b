import type { SheetInput } from '../sheet/sheet.ts';
import { type PlannedStation, placementKey } from '../survey/plan.ts';
import type { Session } from './fold.ts';
import type { TakenRun } from './taken-runs.ts';

/** What of a survey hangs together so far. */
export interface Measured {
  /** The kind of sheet that this much of the survey can fill. */
  readonly kind: SheetInput['kind'];
  readonly stations: readonly PlannedStation[];
  readonly lines: Record<string, string[]>;
}

/**
 * The largest set of stations that these takes tie together, and the lines and the kind of sheet that they allow: a
 * bed of which one way is walked is a way; a plate of which one line is walked is one, too.
 */
export function measured(session: Session, taken: readonly TakenRun[]): Measured {
  const { plan, setup } = session;
  const largest = tiedGroups(taken).reduce<ReadonlySet<string>>(
    (a, b) => (b.size > a.size ? b : a),
    new Set(),
  );
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
      : { kind: 'way', ...longestLine(stations, lines) };
  }
  if (setup.kind === 'plate' && areInLine(stations)) return { kind: 'way', ...longestLine(stations, lines) };
  return { kind: setup.kind === 'straightedge' ? 'way' : setup.kind, stations, lines };
}

/** Sets of stations that readings tie together: the two feet of a level; all tips of the sweeps. */
function tiedGroups(taken: readonly TakenRun[]): Set<string>[] {
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
  const tips = new Map<string, Set<string>>();
  for (const { run, takes } of taken) {
    for (const { place } of takes) {
      if (run.reads === 'tilt') tie(place.at);
      else tips.set(run.line, (tips.get(run.line) ?? new Set()).add(place.at[0]));
    }
  }
  tie([...tips.values()].flatMap((names) => (names.size >= 2 ? [...names] : [])));
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

function longestLine(stations: readonly PlannedStation[], lines: Record<string, string[]>) {
  const [line, names] = Object.entries(lines).reduce<[string, string[]]>(
    (a, b) => (b[1].length > a[1].length ? b : a),
    ['', []],
  );
  const on = new Set(names);
  return {
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
