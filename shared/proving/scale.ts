import { unitFactor } from '../units.ts';
import { noiseOf } from './noise.ts';
import { type Proving, takesOf } from './proving.ts';
import { signOf } from './sign.ts';
import { likelySlip, unitThatFits } from './slips.ts';
import { unitWords } from './unit-words.ts';
import { coverage, type Verdict } from './verdict.ts';

/** An instrument that is off by more than this, as a share of the step, is refused. */
export const allowed = 0.1;

/** How well a foot spacing is known that was measured with a rule, mm (one standard deviation). */
const uBaseMm = 0.3;

/** What the instrument seems to read over what the known step is, and how sure that is (one standard deviation). */
export interface Scale {
  readonly ratio: number;
  readonly u: number;
}

/** The size of the step as a level (µm/m) or an indicator (µm) should read it. */
function expectedStep({ reads, stepUm, baseMm }: Proving): number {
  return reads === 'tilt' ? (1000 * stepUm) / baseMm! : stepUm;
}

/**
 * Standard uncertainty of a step, µm. A feeler is good to about 3 µm and 2 % (common practice, no source), taken as
 * the half width of a uniform distribution; two gauge blocks are good to half a micrometre.
 */
function uStepUm({ stepUm, stepIs }: Pick<Proving, 'stepUm' | 'stepIs'>): number {
  return stepIs === 'block' ? 0.5 : (3 + 0.02 * stepUm) / Math.sqrt(3);
}

/** The scale that the known step has shown; null until it was read. */
function scaleOf(proving: Proving): Scale | null {
  const takes = takesOf(proving, 'scale');
  if (!takes) return null;
  const ratio = Math.abs(takes[1]!.value - takes[0]!.value) / stepInCounts(proving);
  return { ratio, u: uScale(proving, ratio, noiseOf(proving)) };
}

/** How far the known step should move the reading, as the instrument reads. */
export function stepInCounts(proving: Proving): number {
  const { reads, unit, graduation } = proving;
  return expectedStep(proving) / (graduation * unitFactor(reads === 'tilt' ? 'tilt' : 'height', unit));
}

/** Standard uncertainty of a scale that was found to be `ratio`, with readings of this noise. */
export function uScale(proving: Proving, ratio: number, noise: number): number {
  const { reads, stepUm, baseMm } = proving;
  const uReading = (Math.SQRT2 * noise) / stepInCounts(proving);
  const uBase = reads === 'tilt' ? uBaseMm / baseMm! : 0;
  return Math.hypot(uReading, ratio * (uStepUm(proving) / stepUm), ratio * uBase);
}

/** Whether a known step is read as it is, within a tenth; if not, which slip with units is likely. */
export function scaleVerdict(proving: Proving): Verdict | null {
  const scale = scaleOf(proving);
  const takes = takesOf(proving, 'scale');
  if (!scale || !takes) return null;
  const { ratio } = scale;
  const U = coverage * scale.u;
  const found = `${stepWords(proving)}; it read ${times(ratio)} that, sure to ${percent(U / ratio)}`;
  if (U >= ratio) {
    return {
      step: 'scale',
      is: 'doubtful',
      sentence: `${stepWords(proving)}; it hardly moved.`,
      remedy: 'See that the step lies where it should, or take a larger one.',
    };
  }
  const sign = signOf(proving);
  if (sign !== null && Math.sign(takes[1]!.value - takes[0]!.value) !== sign) {
    return {
      step: 'scale',
      is: 'refused',
      sentence: `${stepWords(proving)}; it went the other way than before.`,
      remedy:
        proving.reads === 'tilt' ? `Put the step under the ${proving.far}.` : 'Set the tip on the step.',
    };
  }
  const off = Math.abs(ratio - 1);
  if (off - U <= allowed && U > allowed) {
    return {
      step: 'scale',
      is: 'doubtful',
      sentence: `${found}: that is no proof.`,
      remedy: 'Take a larger step, or gauge blocks in place of a feeler.',
    };
  }
  if (off > allowed) return refused(proving, scale, found);
  return {
    step: 'scale',
    is: 'good',
    sentence: `${found}: the unit is right.`,
  };
}

function refused(proving: Proving, { ratio, u }: Scale, found: string): Verdict {
  const doubt = (coverage * u) / ratio;
  const slip = likelySlip(proving.reads, ratio, doubt);
  const fits = unitThatFits(proving, ratio, doubt);
  return {
    step: 'scale',
    is: 'refused',
    sentence: `${found}: ${slip ? slip.words : 'none of the usual slips explains it'}.`,
    remedy: remedyFor(proving, fits),
    ...(slip && { slip }),
    ...(fits && { fits }),
  };
}

function remedyFor({ reads, unit, unitOpen }: Proving, fits: Verdict['fits'] | null): string {
  const look =
    reads === 'tilt'
      ? 'See to the size of the step and the foot spacing.'
      : 'See to the size of the step, and whether the tip stands square to it.';
  if (!unitOpen) return `The instrument itself says ${unitWords(unit)}. ${look}`;
  return fits
    ? `In ${unitWords(fits)} it would be right. Else: ${look[0]!.toLowerCase()}${look.slice(1)}`
    : look;
}

/** "100 µm under one foot, 150 mm from the other, is 667 µm/m", "The step is 100 µm". */
function stepWords(proving: Proving): string {
  const { reads, stepUm, baseMm } = proving;
  if (reads === 'height') return `The step is ${digits(stepUm)} µm`;
  return `${digits(stepUm)} µm under one foot, ${digits(baseMm!)} mm from the other, is ${digits(expectedStep(proving))} µm/m`;
}

function times(ratio: number): string {
  return `${ratio >= 1000 ? ratio.toFixed(0) : digits(ratio, false)} times`;
}

function percent(share: number): string {
  return `${Math.max(1, Math.ceil(100 * share - 1e-9))} %`;
}

/** Three digits and no power of ten; without idle noughts when the value is exact. */
function digits(value: number, exact = true): string {
  const places = Math.min(6, Math.max(0, 2 - Math.floor(Math.log10(value))));
  return exact ? String(Number(value.toFixed(places))) : value.toFixed(places);
}
