import { type Sheet, type SheetInput, validateSheet } from '../../shared/sheet/sheet.ts';
import { normalFrom, randomFrom } from './random-sheet.ts';

/** A proved sheet of a given kind; what is left out takes its default. */
export function sheetOf(sheet: Omit<SheetInput, 'sheet'>): Sheet {
  return validateSheet({ sheet: 1, ...sheet });
}

/** Stations `F0 … Fn` at equal steps along x. */
export function stationRow(prefix: string, steps: number, baseMm: number, yMm = 0) {
  const names = Array.from({ length: steps + 1 }, (_, k) => `${prefix}${k}`);
  const stations = Object.fromEntries(
    names.map((name, k): [string, [number, number]] => [name, [k * baseMm, yMm]]),
  );
  return { names, stations };
}

/** Readings of a level stepped along the stations over given heights (µm), plus noise. */
export function stepped(
  names: readonly string[],
  baseMm: number,
  heightUm: (k: number) => number,
  noise: () => number = () => 0,
): [from: string, to: string, reading: number][] {
  return names
    .slice(1)
    .map((to, k) => [names[k]!, to, ((heightUm(k + 1) - heightUm(k)) * 1000) / baseMm + noise()]);
}

export interface BedOptions {
  readonly seed: number;
  readonly noise: number;
  readonly steps?: number;
}

/** A constructed bed: both ways walked out and back, and a cross reading at every pair of stations. */
export function bed({ seed, noise, steps = 10 }: BedOptions): Sheet {
  const random = randomFrom(seed);
  const scatter = () => noise * normalFrom(random);
  const baseMm = 200;
  const front = stationRow('F', steps, baseMm);
  const rear = stationRow('R', steps, baseMm, 450);
  const frontUm = (k: number) => 8 * Math.sin(k / 3);
  const rearUm = (k: number) => 5 * Math.cos(k / 4) + 1.5 * k;
  const walk = (id: string, readings: [string, string, number][], zero: string) => ({
    id,
    zero,
    sigma: 1,
    readings: readings.map(([from, to, value]): [string, string, number] => [from, to, value + 30]),
  });
  return sheetOf({
    kind: 'bed',
    stations: { ...front.stations, ...rear.stations },
    lines: { front: front.names, rear: rear.names },
    walks: [
      walk('front out', stepped(front.names, baseMm, frontUm, scatter), 'level'),
      walk('front back', stepped(front.names, baseMm, frontUm, scatter).reverse(), 'level'),
      walk('rear out', stepped(rear.names, baseMm, rearUm, scatter), 'level'),
      walk('rear back', stepped(rear.names, baseMm, rearUm, scatter).reverse(), 'level'),
      walk(
        'cross',
        front.names.map((name, k) => [
          name,
          rear.names[k]!,
          ((rearUm(k) - frontUm(k)) * 1000) / 450 + scatter(),
        ]),
        'free',
      ),
    ],
  });
}
