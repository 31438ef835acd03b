import { amount, side } from '../words.ts';
import {
  type EightLineName,
  type EightLinePlate,
  type EightLineWalk,
  type EightLineWalks,
  eachLine,
} from './eight-lines.ts';

/** A place in plan, mm. */
export type Place = readonly [xMm: number, yMm: number];

/** One step of a walk; `slopeUmPerM` is positive when `to` stands higher, the facing already counted in. */
export interface TiltStep {
  readonly from: Place;
  readonly to: Place;
  readonly slopeUmPerM: number;
}

/** Of the diagonal: places nearer than this are one. */
const SAME_PLACE = 1e-6;

/**
 * The eight walks in the order of the hand method, found by where they run, whichever way round each was walked;
 * undefined where the walks are not just those eight lines, each in an even number of equal steps.
 */
export function eightLinesOfWalks(walks: readonly (readonly TiltStep[])[]): EightLineWalks | undefined {
  const steps = walks.flat();
  if (walks.length !== 8 || walks.some((walk) => walk.length === 0 || walk.length % 2 === 1))
    return undefined;
  const [west, east] = rangeOf(steps.flatMap(({ from, to }) => [from[0], to[0]]));
  const [south, north] = rangeOf(steps.flatMap(({ from, to }) => [from[1], to[1]]));
  const near = SAME_PLACE * Math.hypot(east - west, north - south);
  const same = (p: Place, q: Place) => Math.hypot(p[0] - q[0], p[1] - q[1]) <= near;
  const middle: Place = [(west + east) / 2, (south + north) / 2];
  const ends: Readonly<Record<EightLineName, readonly [Place, Place]>> = {
    firstDiagonal: [
      [west, south],
      [east, north],
    ],
    secondDiagonal: [
      [east, south],
      [west, north],
    ],
    south: [
      [west, south],
      [east, south],
    ],
    north: [
      [west, north],
      [east, north],
    ],
    west: [
      [west, south],
      [west, north],
    ],
    east: [
      [east, south],
      [east, north],
    ],
    centreAlong: [
      [west, middle[1]],
      [east, middle[1]],
    ],
    centreAcross: [
      [middle[0], south],
      [middle[0], north],
    ],
  };
  const found = eachLine((name): EightLineWalk | undefined => {
    const [start, end] = ends[name];
    for (const walk of walks) {
      for (const steps of [walk, turnedRound(walk)]) {
        if (isEvenWalk(steps, start, end, same)) {
          const stepMm = lengthOf(start, end) / steps.length;
          return { stepMm, readingsUmPerM: steps.map(({ slopeUmPerM }) => slopeUmPerM) };
        }
      }
    }
    return undefined;
  });
  return isComplete(found) ? found : undefined;
}

/** What the hand method finds, for a person to compare with the joint adjustment. */
export function eightLineSentence({ closuresUm, flatnessUm }: EightLinePlate): string {
  const closure = (value: number) => {
    const where = side(value, 0);
    return where === 'level' ? 'closes' : `closes ${amount(value, 0)} µm ${where}`;
  };
  return `By hand columns (Moody): the centre line along ${closure(closuresUm.centreAlong)}, the one across ${closure(closuresUm.centreAcross)}, and the plate is ${amount(flatnessUm, 0)} µm over the plane of its diagonals. There the centre lines only check; the joint adjustment takes every reading into the heights, and so is surer.`;
}

/** Whether the steps lead from start to end, each a same part of the way, none left out. */
function isEvenWalk(
  steps: readonly TiltStep[],
  start: Place,
  end: Place,
  same: (p: Place, q: Place) => boolean,
): boolean {
  const at = (k: number): Place => [
    start[0] + ((end[0] - start[0]) * k) / steps.length,
    start[1] + ((end[1] - start[1]) * k) / steps.length,
  ];
  return steps.every(({ from, to }, k) => same(from, at(k)) && same(to, at(k + 1)));
}

function turnedRound(walk: readonly TiltStep[]): TiltStep[] {
  return walk
    .map(({ from, to, slopeUmPerM }) => ({ from: to, to: from, slopeUmPerM: -slopeUmPerM }))
    .reverse();
}

function isComplete(
  lines: Readonly<Record<EightLineName, EightLineWalk | undefined>>,
): lines is EightLineWalks {
  return Object.values(lines).every((line) => line !== undefined);
}

function lengthOf(p: Place, q: Place): number {
  return Math.hypot(q[0] - p[0], q[1] - p[1]);
}

function rangeOf(values: readonly number[]): [number, number] {
  return values.reduce<[number, number]>(
    ([low, high], value) => [Math.min(low, value), Math.max(high, value)],
    [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  );
}
