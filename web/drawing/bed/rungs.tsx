import type { Lean } from '../../../shared/figures/corner-plane.ts';
import { asWritten } from '../../words/quantity.ts';
import type { Across } from '../across.ts';
import { type LadderRows, wayPx } from './ladder-rows.ts';
import type { LeanScale } from './lean-scale.ts';

interface RungsProps {
  readonly across: Across;
  readonly rows: LadderRows;
  /** Where a cross reading belongs, and whether it is read. */
  readonly rungs: readonly { readonly xMm: number; readonly read: boolean }[];
  readonly leans: readonly Lean[];
  readonly scale: LeanScale;
}

/** Half of the uncertainty covers about 95 %, as the words "sure to" do. */
const coverage = 2;

/**
 * A thin rung where the bridge stands, and a bar that leans off it as the bed leans there against its first rung. The shaded
 * wedges between them are the twist as it runs along.
 */
export function Rungs({ across, rows, rungs, leans, scale }: RungsProps) {
  const top = rows.rearPx + wayPx / 2 + 5;
  const bottom = rows.frontPx - wayPx / 2 - 5;
  const middle = (top + bottom) / 2;
  const at = new Set(rungs.map(({ xMm }) => xMm));
  const bars = leans.filter(({ xMm }) => at.has(xMm));
  return (
    <g>
      {rungs.map(({ xMm, read }) => (
        <path
          key={xMm}
          class={read ? 'rung read' : 'rung'}
          d={`M${across.px(xMm)} ${rows.rearPx + wayPx / 2}V${rows.frontPx - wayPx / 2}`}
        />
      ))}
      {bars.map(({ from, to, xMm, slopeUmPerM, uUmPerM }) => {
        const px = across.px(xMm);
        const half = (slopeUmPerM * scale.pxPerUmPerM) / 2;
        const sure = (coverage * uUmPerM * scale.pxPerUmPerM) / 2;
        return (
          <g key={from}>
            <path class="wedge" d={`M${px} ${middle}V${top}H${px + half}L${px - half} ${bottom}H${px}z`} />
            <path class="sure" d={`M${px + half - sure} ${top}H${px + half + sure}`} />
            <path class="lean" d={`M${px - half} ${bottom}L${px + half} ${top}`}>
              <title>{`${from}–${to}: ${asWritten().size(slopeUmPerM, 0.1, 'µm/m')}, rear ${slopeUmPerM > 0 ? 'HIGH' : 'LOW'} against the first rung`}</title>
            </path>
          </g>
        );
      })}
    </g>
  );
}
