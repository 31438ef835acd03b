import type { ReadingUnit } from '../session/setup.ts';
import { type HeightUnit, heightUnits, type TiltUnit, tiltUnits, unitFactor } from '../units.ts';
import type { Proving } from './proving.ts';

/** A slip that people make with units, and how many times too much the instrument then seems to read. */
export interface Slip {
  readonly id: 'foot' | 'arcsec' | 'inch' | 'decimal';
  /** Seeming over true. */
  readonly times: number;
  /** "as if …" */
  readonly words: string;
}

const arcsecUmPerM = unitFactor('tilt', 'arcsec');
const mmPerInch = unitFactor('length', 'in');

const tiltSlips: readonly Slip[] = [
  ...bothWays('foot', 1.2, 'inches per foot', 'inches per ten inches'),
  ...bothWays('arcsec', arcsecUmPerM, 'µm/m', 'arc seconds'),
];

const anySlips: readonly Slip[] = [
  ...bothWays('inch', mmPerInch, 'mm', 'inches'),
  ...[1, 2, 3].flatMap((places): Slip[] => {
    const words = (side: string) =>
      `as if the decimal point stood ${places} place${places === 1 ? '' : 's'} too far to the ${side}`;
    return [
      { id: 'decimal', times: 10 ** places, words: words('right') },
      { id: 'decimal', times: 10 ** -places, words: words('left') },
    ];
  }),
];

/** Two units that are taken for each other: the finer one taken for the coarser one seems `times` too much. */
function bothWays(id: Slip['id'], times: number, finer: string, coarser: string): Slip[] {
  return [
    { id, times, words: `as if ${finer} were taken for ${coarser}` },
    { id, times: 1 / times, words: `as if ${coarser} were taken for ${finer}` },
  ];
}

/** Two ratios are the same slip when they differ by less than this, or by less than the doubt of the ratio. */
const sameWithin = 0.07;

/**
 * The slip that explains a ratio best, or null when none does.
 * @param ratio what the instrument seems to read, over what it should
 * @param doubt relative expanded uncertainty of the ratio
 */
export function likelySlip(reads: Proving['reads'], ratio: number, doubt: number): Slip | null {
  const known = reads === 'tilt' ? [...tiltSlips, ...anySlips] : anySlips;
  const nearest = known.reduce((a, b) => (misfit(ratio, b.times) < misfit(ratio, a.times) ? b : a));
  return misfit(ratio, nearest.times) <= Math.max(sameWithin, doubt) ? nearest : null;
}

/** The unit in which the same readings would be right, or null when there is none. */
export function unitThatFits(
  { reads, unit }: Pick<Proving, 'reads' | 'unit'>,
  ratio: number,
  doubt: number,
): ReadingUnit | null {
  const others: readonly ReadingUnit[] = reads === 'tilt' ? tiltUnits : heightUnits;
  const quantity = reads === 'tilt' ? 'tilt' : 'height';
  const own = unitFactor(quantity, unit);
  const off = (other: TiltUnit | HeightUnit) => misfit((ratio * unitFactor(quantity, other)) / own, 1);
  const nearest = others.reduce((a, b) => (off(b) < off(a) ? b : a));
  return nearest !== unit && off(nearest) <= Math.max(sameWithin, doubt) ? nearest : null;
}

function misfit(ratio: number, times: number): number {
  return Math.abs(Math.log(ratio / times));
}
