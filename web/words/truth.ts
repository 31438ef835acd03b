import { amount, sureTo } from '../../shared/words.ts';
import type { ReducedStation } from '../state/survey-result.ts';

/** How the survey compares with the true shape, against what it claims to be sure to. */
export function truthSentence(found: readonly ReducedStation[], truth: readonly ReducedStation[]): string {
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
    `Furthest off is ${worst.name}: ${amount(worst.off, worst.uUm)} µm, ${sureTo(worst.uUm)} there.`
  );
}
