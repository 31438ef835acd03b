import type { Header } from '../../../shared/session/events.ts';
import type { Result } from '../../../shared/sheet/result.ts';

export interface AtStation {
  readonly name: string;
  readonly foundUm: number;
  readonly uUm: number;
  readonly trueUm: number;
}

/**
 * Found and true height of every station of a line, both against the line through its ends. Written without the
 * reduction, so that it can be held against it.
 */
export function trueLine({ simulated }: Header, result: Result, name: string): AtStation[] {
  const truth = simulated!.truthUm;
  const stations = Object.entries(result.lines[name]!.stations);
  const last = stations.length - 1;
  const [first, end] = [truth[stations[0]![0]]!, truth[stations[last]![0]]!];
  const [foundFirst, foundEnd] = [stations[0]![1].heightUm, stations[last]![1].heightUm];
  // Stations of every lesson stand in even steps.
  return stations.map(([station, { heightUm, uUm }], k) => ({
    name: station,
    foundUm: heightUm - foundFirst - ((foundEnd - foundFirst) * k) / last,
    uUm,
    trueUm: truth[station]! - first - ((end - first) * k) / last,
  }));
}

/** Where a lesson's survey lies furthest from the true metal, line by line: what no reading of it could tell. */
export function truthError(header: Header, result: Result): { station: string; offUm: number } {
  const all = Object.keys(result.lines).flatMap((line) => trueLine(header, result, line));
  return all.reduce(
    (worst, { name, foundUm, trueUm }) => {
      const offUm = Math.abs(foundUm - trueUm);
      return offUm > worst.offUm ? { station: name, offUm } : worst;
    },
    { station: '', offUm: 0 },
  );
}
