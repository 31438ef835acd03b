import type { Session } from '../session/fold.ts';
import type { Plan } from '../survey/plan.ts';
import { placeWords } from '../survey/plan.ts';
import { amount } from '../words.ts';
import type { Notice } from './notice.ts';
import type { PairedLine } from './pairs.ts';
import { polynomial } from './polynomial.ts';
import { sigmaOf, unitOf } from './reading.ts';

/** What the zero of an instrument did while a line was gone over out and back. */
export interface Drift {
  /** Change of the zero over one run, µm/m or µm, and its standard uncertainty. */
  readonly overRun: number;
  readonly u: number;
  /** What that would make of the line on one run alone: a bow in the middle (level) or a taper (indicator), µm. */
  readonly falseUm: number;
  /** False: it crept, faster at first than at last or the other way; then out and back do not cancel it. */
  readonly steady: boolean;
}

const fewestPairs = 4;
/** So many standard uncertainties make a drift sure. */
const sure = 4;
/** The same where nothing but the scatter of few readings tells the uncertainty: Student's t, two-sided 0.1 %, by freedom (from memory, unchecked). */
const student = [636.6, 31.6, 12.92, 8.61, 6.87, 5.96, 5.41, 5.04, 4.78, 4.59, 4.44, 4.32, 4.22, 4.14, 4.07];
/** A smaller false shape nobody sees, µm. */
const leastUm = 0.1;

/**
 * The drift that out and back show: the difference of the two readings of a place against the number of takes between
 * them. Null where the level was turned for the walk back, as a drift and a bow look alike then, or with too few pairs.
 *
 * A level whose zero changes by d over a walk of length L tilts each step by d·x/L too much; summed up, with the line
 * through the ends taken off, that is a bow of d·L/8 in the middle: g·L²/8 with the rate g = d/L. An indicator's zero
 * goes into the height itself: a taper of d.
 */
export function driftOf(session: Session, { out, line, alike, pairs }: PairedLine): Drift | null {
  if (!alike || pairs.length < fewestPairs) return null;
  const differences = pairs.map(({ outValue, backValue }) => outValue - backValue);
  const turns = pairs.map(({ outTurn, backTurn }) => outTurn - backTurn);
  const linear = polynomial([turns], differences);
  const [rate] = linear.coefficients;
  const [uRate] = linear.u;
  const overRun = rate! * pairs.length;
  const known = session.setup.instrument.sigma !== undefined;
  const sigma = known ? Math.SQRT2 * sigmaOf(session, null) : 0;
  const u = Math.max(uRate!, sigma * linear.perSigma[0]!) * pairs.length;
  const enough = known ? sure : Math.max(sure, student[pairs.length - 3] ?? 0);
  if (!(Math.abs(overRun) > enough * u)) return null;
  // What creeps alike before and after the far end (even powers) shows in no difference of out and back.
  const middle = pairs.length - 0.5;
  const bent = pairs.map(({ outTurn, backTurn }) => (outTurn - middle) ** 3 - (backTurn - middle) ** 3);
  const curved = polynomial([turns, bent], differences);
  const steady = pairs.length < 6 || !(Math.abs(curved.coefficients[1]!) > sure * curved.u[1]!);
  const falseUm =
    out.reads === 'tilt' ? (Math.abs(overRun) * lengthOf(session.plan, line)) / 8000 : Math.abs(overRun);
  return { overRun, u, falseUm, steady };
}

export function drift(session: Session, line: PairedLine): Notice[] {
  const found = driftOf(session, line);
  if (!found || found.falseUm < Math.max(leastUm, (session.setup.limit ?? 0) / 20)) return [];
  const { overRun, u, falseUm, steady } = found;
  const level = line.out.reads === 'tilt';
  const what = level ? 'bow' : 'taper';
  const size = `${amount(overRun, u)} ${unitOf(line.out)}`;
  const fake = `on one ${level ? 'walk' : 'sweep'} alone that would look like ${steady ? '' : 'at least '}${amount(falseUm, (falseUm * u) / Math.abs(overRun))} µm of ${what}`;
  const cure = steady
    ? session.driftOff
      ? 'It is taken off, as you chose.'
      : 'Out and back together cancel a steady drift.'
    : 'It was not steady, so out and back do not cancel it: warm hands, sun or a draught. Let it stand, then go over it again.';
  return [
    {
      code: 'drift',
      text: `${line.line}: the zero drifted by ${size} from one end to the other; ${fake}. ${cure}`,
      warns: !steady,
    },
  ];
}

/** Where the level was turned for the walk back, a steady drift hides behind a bow. */
export function driftOrBow({ out, alike, pairs, line }: PairedLine): Notice[] {
  if (alike || out.reads !== 'tilt' || pairs.length < fewestPairs) return [];
  const place = pairs[0]!.out;
  return [
    {
      code: 'drift-or-bow',
      text: `${line}: with the level turned for the walk back, a steady drift looks just like a bow. Read ${placeWords(place)} once more, facing as on the way out: what has changed there is drift.`,
      place,
      warns: false,
    },
  ];
}

export function lengthOf({ stations, lines }: Plan, line: string): number {
  const [first, last] = [lines[line]![0], lines[line]!.at(-1)].map(
    (end) => stations.find(({ name }) => name === end)!,
  );
  return Math.hypot(last!.xMm - first!.xMm, last!.yMm - first!.yMm);
}
