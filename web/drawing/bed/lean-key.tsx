import { amountSureTo } from '../../../shared/words.ts';
import { asWritten } from '../../words/quantity.ts';
import type { LeanScale } from './lean-scale.ts';

interface LeanKeyProps {
  readonly scale: LeanScale;
  /** The first rung, which the others lean against. */
  readonly from: string;
  readonly to: string;
  readonly twist: { readonly value: number; readonly u: number } | undefined;
}

/** What a leaning bar means, and how much. */
export function LeanKey({ scale, from, to, twist }: LeanKeyProps) {
  const { keyUmPerM, keyPx } = scale;
  const writing = asWritten();
  return (
    <p class="caption-line lean-key">
      {twist && `Twist ${amountSureTo(twist.value, twist.u, 'µm/m', writing)}. `}
      Lean against {from}–{to}: a bar that leans right says rear HIGH; a lean of{' '}
      <svg width={keyPx + 2} height={16} viewBox={`0 0 ${keyPx + 2} 16`} aria-hidden="true">
        <path class="rung read" d={`M${1 + keyPx / 2} 1V15`} />
        <path class="wedge" d={`M${1 + keyPx / 2} 15V1H${1 + keyPx}L1 15z`} />
        <path class="lean" d={`M1 15L${1 + keyPx} 1`} />
      </svg>{' '}
      is {writing.exact(keyUmPerM, 'µm/m')}. Whisker: 95 % sure.
    </p>
  );
}
