import type { Session } from '../../shared/session/fold.ts';
import { trueHeights } from '../drawing/plate/true-heights.ts';
import type { Reference } from '../state/page-state.ts';
import type { SurveyResult } from '../state/survey-result.ts';
import { trueShape } from '../state/true-shape.ts';
import { asWritten } from './quantity.ts';

interface Height {
  readonly name: string;
  readonly heightUm: number;
  readonly uUm: number;
}

/** How the survey of a simulated part compares with its true shape; empty when the part is real. */
export function truthWords(session: Session, survey: SurveyResult, reference: Reference): string {
  const truth = session.header.simulated?.truthUm;
  if (!truth) return '';
  const { result, lines } = survey;
  if (session.setup.kind !== 'plate' || result.kind !== 'plate') {
    const found = lines.flatMap((line) => line.stations);
    return truthSentence(found, trueShape(session, survey, reference).flat());
  }
  const plate = { ...session, setup: session.setup };
  const known = Object.entries(result.stations).map(([name, height]) => ({ name, ...height }));
  const heights = [...trueHeights(plate, result, truth)];
  return truthSentence(
    known,
    heights.map(([name, heightUm]) => ({ name, heightUm, uUm: 0 })),
  );
}

/** How the survey compares with the true shape, against what it claims to be sure to. */
function truthSentence(found: readonly Height[], truth: readonly Height[]): string {
  const trueHeight = new Map(truth.map(({ name, heightUm }) => [name, heightUm]));
  const differences = found.flatMap(({ name, heightUm, uUm }) => {
    const height = trueHeight.get(name);
    return height === undefined ? [] : [{ name, off: Math.abs(heightUm - height), uUm }];
  });
  const worst = differences.reduce((most, each) => (each.off > most.off ? each : most), {
    name: '',
    off: -1,
    uUm: 0,
  });
  if (!worst.name) return '';
  const within = differences.filter(({ off, uUm }) => off <= 2 * uUm + 1e-9).length;
  return (
    `${within} of ${differences.length} stations lie as near to the true shape as they claim. ` +
    `Furthest off is ${worst.name}: ${asWritten().size(worst.off, worst.uUm)}, ${asWritten().sureTo(worst.uUm)} there.`
  );
}
