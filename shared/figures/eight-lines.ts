/**
 * The eight-line plate by hand columns, as it is taught on paper after J. C. Moody (1955): two diagonals,
 * four sides and two centre lines, each walked in equal steps with an even number of steps. The steps
 * were recalled, and agree with published descriptions of the method. It is here beside the joint
 * adjustment so that a person can compare the two: by hand the centre lines only check, jointly every
 * reading also helps.
 */

export type EightLineName =
  | 'firstDiagonal'
  | 'secondDiagonal'
  | 'south'
  | 'north'
  | 'west'
  | 'east'
  | 'centreAlong'
  | 'centreAcross';

/** One thing for each of the eight lines. */
export type EachLine<T> = Readonly<Record<EightLineName, T>>;

/** Makes one thing for each of the eight lines. */
export function eachLine<T>(make: (name: EightLineName) => T): EachLine<T> {
  return {
    firstDiagonal: make('firstDiagonal'),
    secondDiagonal: make('secondDiagonal'),
    south: make('south'),
    north: make('north'),
    west: make('west'),
    east: make('east'),
    centreAlong: make('centreAlong'),
    centreAcross: make('centreAcross'),
  };
}

/** One walk: slopes in µm/m in the order of the steps, each `stepMm` long. */
export interface EightLineWalk {
  readonly stepMm: number;
  readonly readingsUmPerM: readonly number[];
}

/**
 * Walks by name. South-west is the corner that the first diagonal starts from. First diagonal: SW → NE,
 * second: SE → NW; south: SW → SE, north: NW → NE, west: SW → NW, east: SE → NE; centre along: middle of
 * west → middle of east, centre across: middle of south → middle of north.
 */
export type EightLineWalks = EachLine<EightLineWalk>;

/** One line worked out: running sums from 0 and heights over the datum plane, µm, one more than steps. */
export interface EightLineColumns {
  readonly sumsUm: readonly number[];
  readonly heightsUm: readonly number[];
}

export interface EightLinePlate {
  readonly lines: EachLine<EightLineColumns>;
  /** What the middle of each centre line shows instead of 0, µm. */
  readonly closuresUm: Readonly<Record<'centreAlong' | 'centreAcross', number>>;
  /** Heights of the centre lines with the closure spread: nothing at the ends, all of it at the middle, µm. */
  readonly spreadUm: Readonly<Record<'centreAlong' | 'centreAcross', readonly number[]>>;
  /** Greatest minus least height over the datum plane, closures spread, µm. It depends on that plane. */
  readonly flatnessUm: number;
}

/**
 * The heights of all eight lines over the plane through the plate's centre, parallel to both diagonals.
 * Diagonals: shifted and tilted until the middle is 0 and both ends are equal. Sides: until their ends
 * take the corners. Centre lines: until their ends take the middles of the sides; what their own middle
 * shows is the closure. Throws RangeError for an odd or zero number of steps.
 */
export function eightLinePlate(walks: EightLineWalks): EightLinePlate {
  const sums = eachLine((name) => runningSums(walks[name], name));
  const first = levelDiagonal(sums.firstDiagonal);
  const second = levelDiagonal(sums.secondDiagonal);
  const corner = { sw: first[0]!, ne: first.at(-1)!, se: second[0]!, nw: second.at(-1)! };
  const south = between(sums.south, corner.sw, corner.se);
  const north = between(sums.north, corner.nw, corner.ne);
  const west = between(sums.west, corner.sw, corner.nw);
  const east = between(sums.east, corner.se, corner.ne);
  const heights: EachLine<number[]> = {
    firstDiagonal: first,
    secondDiagonal: second,
    south,
    north,
    west,
    east,
    centreAlong: between(sums.centreAlong, middleOf(west), middleOf(east)),
    centreAcross: between(sums.centreAcross, middleOf(south), middleOf(north)),
  };
  const spread = {
    centreAlong: closureSpread(heights.centreAlong),
    centreAcross: closureSpread(heights.centreAcross),
  };
  const all = Object.values({ ...heights, ...spread }).flat();
  return {
    lines: eachLine((name) => ({ sumsUm: sums[name], heightsUm: heights[name] })),
    closuresUm: {
      centreAlong: middleOf(heights.centreAlong),
      centreAcross: middleOf(heights.centreAcross),
    },
    spreadUm: spread,
    flatnessUm: Math.max(...all) - Math.min(...all),
  };
}

function runningSums({ stepMm, readingsUmPerM }: EightLineWalk, name: string): number[] {
  if (readingsUmPerM.length === 0 || readingsUmPerM.length % 2 === 1) {
    throw new RangeError(`${name} needs an even number of steps, so that one station is its middle`);
  }
  const sums = [0];
  for (const reading of readingsUmPerM) sums.push(sums.at(-1)! + (reading * stepMm) / 1000);
  return sums;
}

function levelDiagonal(sums: readonly number[]): number[] {
  const middle = (sums.length - 1) / 2;
  const tilt = sums.at(-1)! / (sums.length - 1);
  return sums.map((sum, k) => sum - sums[middle]! - tilt * (k - middle));
}

function between(sums: readonly number[], start: number, end: number): number[] {
  const steps = sums.length - 1;
  const tilt = (end - start - sums[steps]!) / steps;
  return sums.map((sum, k) => start + sum + tilt * k);
}

function closureSpread(heights: readonly number[]): number[] {
  const middle = (heights.length - 1) / 2;
  const closure = heights[middle]!;
  return heights.map((height, k) => height - closure * (1 - Math.abs(k - middle) / middle));
}

function middleOf(heights: readonly number[]): number {
  return heights[(heights.length - 1) / 2]!;
}
