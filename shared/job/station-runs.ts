/**
 * Stations as they are said: "F0–F2, F5", each run along one line and not broken at the dash. What stands on several
 * lines is told once; a later run goes on over it.
 */
export function stationRuns(names: readonly string[], lines: readonly (readonly string[])[]): string {
  const wanted = new Set(names);
  const told = new Set<string>();
  const runs: string[][] = [];
  for (const line of lines) {
    let run: string[] | null = null;
    for (const name of line) {
      if (!wanted.has(name)) run = null;
      else if (!told.has(name)) {
        if (!run) {
          run = [];
          runs.push(run);
        }
        run.push(name);
      }
    }
    for (const name of line) told.add(name);
  }
  return runs.map((run) => (run.length > 1 ? `${run[0]}–\u2060${run.at(-1)}` : run[0])).join(', ');
}

/**
 * Stations as a person writes them, "F4-F6, F9", in the order in which they stand; `unknown` is the first that is none
 * of them. A run goes along the first line that has both of its ends.
 */
export function readStations(
  text: string,
  lines: readonly (readonly string[])[],
): { stations: string[]; unknown: string | null } {
  const order = [...new Set(lines.flat())];
  const found = new Set<string>();
  for (const part of text.split(/[,;\s]+/).filter(Boolean)) {
    const run = [part, ...part.split(/[-–\u2060]+/)].map((each) => nameLike(each, order));
    const [whole, from = null, to = null] = run;
    if (whole) found.add(whole);
    else if (from === null || to === null) return { stations: [], unknown: part };
    else {
      const line = lines.find((each) => each.includes(from) && each.includes(to)) ?? order;
      const [a, b] = [line.indexOf(from), line.indexOf(to)];
      for (const name of line.slice(Math.min(a, b), Math.max(a, b) + 1)) found.add(name);
    }
  }
  return { stations: order.filter((name) => found.has(name)), unknown: null };
}

function nameLike(text: string, names: readonly string[]): string | null {
  return names.find((name) => name.toLowerCase() === text.toLowerCase()) ?? null;
}
