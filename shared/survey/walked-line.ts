import { facingOf } from './dimensions.ts';
import { steps, type TiltRun } from './plan.ts';

/**
 * The walks over one line of stations: out, and back if wanted. On the walk back the placements come in reverse,
 * but the feet keep their names: the first is always the one nearer to the start end.
 */
export function walksOver(
  line: string,
  title: string,
  names: readonly string[],
  { faces, back }: { faces: 'far' | 'start'; back: 'no' | 'same' | 'turned' },
): TiltRun[] {
  const feet = steps(names);
  const out: TiltRun = {
    id: `${line} out`,
    words: `${title}, going out`,
    line,
    wanted: true,
    reads: 'tilt',
    feet,
    facing: facingOf(faces),
    zero: 'free',
  };
  const turned = back === 'turned';
  const walkBack: TiltRun = {
    ...out,
    id: `${line} back`,
    words: `${title}, coming back${turned ? ', level turned' : ''}`,
    wanted: back !== 'no',
    feet: feet.toReversed(),
    facing: facingOf(faces, turned),
  };
  return [out, walkBack];
}
