import type { Session } from '../session/fold.ts';
import { lengthOf } from './drift.ts';
import type { Notice } from './notice.ts';
import { countOf, lengthWords, unitOf } from './reading.ts';

/** The last digit may take this share of the limit, as an uncertainty that covers about 95 %. */
const share = 1 / 3;

/**
 * An instrument whose last digit is too coarse for the limit. A rounded reading is uncertain by the digit over √12; on a
 * walk of n steps that grows to base·u·√n/2 in the middle, on a sweep to √2·u between two stations.
 */
export function resolution({ setup, plan }: Session, smallest: number | undefined): Notice[] {
  const { limit } = setup;
  const [run] = plan.runs;
  if (smallest === undefined || limit === undefined || !run) return [];
  const digit = smallest * countOf(setup);
  const u = digit / Math.sqrt(12);
  const lengthMm = lengthOf(plan, run.line);
  const steps = Math.max(1, plan.lines[run.line]!.length - 1);
  const height = run.reads === 'tilt' ? ((lengthMm / steps) * u * Math.sqrt(steps)) / 2000 : Math.SQRT2 * u;
  const isSlope = setup.kind === 'square' || setup.kind === 'bar';
  const doubt = 2 * (isSlope ? (1000 * height) / lengthMm : height);
  if (doubt <= share * limit) return [];
  const unit = isSlope ? 'µm/m' : 'µm';
  return [
    {
      code: 'resolution',
      text: `This instrument can't see what is asked: its last digit of ${Number(digit.toPrecision(3))} ${unitOf(run)} alone leaves ${doubt.toPrecision(2)} ${unit} of doubt over ${lengthWords(lengthMm, setup)}, and the limit is ${limit} ${unit}. Take a finer one, or a longer foot spacing.`,
      warns: true,
    },
  ];
}
