import type { EightLineName } from '../../shared/figures/eight-lines.ts';

/**
 * Constructed: a plate of 400 × 300 mm, 5 × 5 stations, walked along eight lines. True heights in µm, row
 * by row (y = 0, 75 … 300), readings in µm/m that follow from them exactly, and what is added to them to
 * make the lines disagree.
 */
export const unionJack = {
  columns: 5,
  rows: 5,
  stepXMm: 100,
  stepYMm: 75,
  trueHeightsUm: [3, 1, -1, 0, 2, 2, 4, 5, 3, 1, -2, 3, 6, 5, 0, -1, 2, 4, 3, -2, 1, -1, -3, -2, -4],
} as const;

interface UnionJackLine {
  readonly name: EightLineName;
  /** Station indices in the order walked, row by row in the grid. */
  readonly stations: readonly number[];
  readonly stepMm: number;
  readonly exact: readonly number[];
  readonly added: readonly number[];
}

export const unionJackLines: readonly UnionJackLine[] = [
  line('firstDiagonal', [0, 6, 12, 18, 24], 125, [8, 16, -24, -56], [0, 4, 0, -4]),
  line('secondDiagonal', [4, 8, 12, 16, 20], 125, [8, 24, -32, -8], [4, 0, 0, 0]),
  line('south', [0, 1, 2, 3, 4], 100, [-20, -20, 10, 20], [0, 0, 5, 0]),
  line('north', [20, 21, 22, 23, 24], 100, [-20, -20, 10, -20], [0, -5, 0, 0]),
  line('west', [0, 5, 10, 15, 20], 75, [-40 / 3, -160 / 3, 40 / 3, 80 / 3], [0, 0, 0, 0]),
  line('east', [4, 9, 14, 19, 24], 75, [-40 / 3, -40 / 3, -80 / 3, -80 / 3], [0, 8, 0, 0]),
  line('centreAlong', [10, 11, 12, 13, 14], 100, [50, 30, -10, -50], [5, 0, 0, 5]),
  line('centreAcross', [2, 7, 12, 17, 22], 75, [80, 40 / 3, -80 / 3, -280 / 3], [0, 0, -8, 0]),
];

function line(
  name: EightLineName,
  stations: readonly number[],
  stepMm: number,
  exact: readonly number[],
  added: readonly number[],
): UnionJackLine {
  return { name, stations, stepMm, exact, added };
}

export function readingsOf({ exact, added }: UnionJackLine, perturbed: boolean): number[] {
  return exact.map((reading, k) => reading + (perturbed ? added[k]! : 0));
}

/** The survey as a sheet. `zero`: of each walk its own (`free`), one for all (`common`), or `known`. */
export function unionJackSheet(perturbed: boolean, zero: 'free' | 'common' | 'known') {
  const name = (k: number) => `P${k % 5}${Math.floor(k / 5)}`;
  return {
    sheet: 1,
    kind: 'plate',
    gravityCurvature: 'off',
    stations: Object.fromEntries(
      unionJack.trueHeightsUm.map((_, k) => [name(k), [100 * (k % 5), 75 * Math.floor(k / 5)]]),
    ),
    walks: unionJackLines.map((line) => ({
      id: line.name,
      zero,
      readings: readingsOf(line, perturbed).map((reading, k) => [
        name(line.stations[k]!),
        name(line.stations[k + 1]!),
        reading,
      ]),
    })),
  };
}
