import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import { placementKey, placementsOf, placeWords, type Run } from '../survey/plan.ts';
import { amount } from '../words.ts';
import type { Notice } from './notice.ts';
import { type CountedReading, lengthWords, readingsOf, sigmaOf, unitOf, wipe } from './reading.ts';

/** Below this redundancy the other readings can't tell a wrong one. */
const unchecked = 0.05;
/** A jump is so many of its standard deviations. */
const timesSigma = 5;
/** The two readings on each side lie on one straight line, to within this share of the jump; on a bow they lie 0.6 off. */
const straight = 0.25;

interface Jump {
  readonly reading: CountedReading;
  /** How far it stands out from the straight line through the two readings on each side. */
  readonly size: number;
  /** How far one of these four stands off that line. */
  readonly flanksOff: number;
}

/**
 * In a run that nothing checks, the reading that stands out alone between neighbours that agree. Wear is never that
 * narrow: a lone step with straight flanks is a chip or a burr until it has been wiped and read again.
 */
export function loneJump(session: Session, result: Result | null): Notice[] {
  const sigma = sigmaOf(session, result);
  const found = readingsOf(session, result).flatMap(({ run, readings }) => {
    const jump = loneJumpOf(run, readings, sigma);
    return jump ? [{ run, jump }] : [];
  });
  return found.map(({ run, jump: { reading, size } }) => ({
    code: 'lone-jump',
    text: `${placeWords(reading.place)} reads ${amount(size, sigma)} ${unitOf(run)} ${size > 0 ? 'more' : 'less'} than its neighbours on both sides${stepWords(session, run, reading, size)}. That is dirt or a burr until proved: ${wipe(run).toLowerCase()}, repeat it.`,
    place: reading.place,
    warns: true,
  }));
}

function loneJumpOf(run: Run, readings: readonly CountedReading[], sigma: number): Jump | null {
  const byPlace = new Map(readings.map((reading) => [placementKey(reading.place), reading]));
  const inOrder = placementsOf(run).map((place) => byPlace.get(placementKey(place)));
  const jumps = inOrder.flatMap((reading, k): Jump[] => {
    const around = [-2, -1, 1, 2].map((at) => ({ at, value: inOrder[k + at]?.value }));
    if (!reading || around.some(({ value }) => value === undefined)) return [];
    const middle = around.reduce((sum, { value }) => sum + value!, 0) / 4;
    const rate = around.reduce((sum, { at, value }) => sum + at * value!, 0) / 10;
    const off = around.map(({ at, value }) => Math.abs(value! - middle - rate * at));
    return [{ reading, size: reading.value - middle, flanksOff: Math.max(...off) }];
  });
  const lone = jumps.filter(({ reading, size, flanksOff }) => {
    const isChecked = (reading.fitted?.redundancy ?? 0) >= unchecked;
    // The mean of four has half the deviation of one.
    const deviation = sigma * Math.sqrt(1.25);
    return !isChecked && flanksOff <= straight * Math.abs(size) && Math.abs(size) > timesSigma * deviation;
  });
  return lone.reduce<Jump | null>((a, b) => (a && Math.abs(a.size) >= Math.abs(b.size) ? a : b), null);
}

/** What a jump of a level's reading is in height: all that lies beyond is lifted by it. */
function stepWords({ plan, setup }: Session, run: Run, { place }: CountedReading, size: number): string {
  if (run.reads !== 'tilt') return '';
  const [a, b] = place.at.map((name) => plan.stations.find((station) => station.name === name)!);
  const baseMm = Math.hypot(b!.xMm - a!.xMm, b!.yMm - a!.yMm);
  return `, a step of ${((Math.abs(size) * baseMm) / 1000).toFixed(1)} µm over ${lengthWords(baseMm, setup)}`;
}
