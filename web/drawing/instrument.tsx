import type { Session } from '../../shared/session/fold.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import { runOf } from '../state/on-plan.ts';
import { feetPx, footWidth, Level } from './level.tsx';
import { Pins } from './pins.tsx';
import { Tip } from './tip.tsx';

/** Where a placement lies in a drawing: px of its feet or its tip, and of the metal's surface. */
export interface DrawnPlace {
  readonly px: readonly number[];
  readonly surfacePx: number;
}

interface InstrumentProps extends DrawnPlace {
  readonly session: Session;
  readonly place: Placement;
  readonly metalPx: number;
  readonly lifted: boolean;
  readonly stale: boolean;
}

/** The instrument on its place: a level on two feet or an indicator on its tip. */
export function Instrument({ session, place, px, metalPx, ...stands }: InstrumentProps) {
  const run = runOf(session, place.run);
  const [fromPx = 0, toPx = fromPx] = px;
  if (session.setup.kind === 'dovetail') return <Pins px={fromPx} metalPx={metalPx} {...stands} />;
  if (run?.reads === 'height') return <Tip px={fromPx} {...stands} />;
  return <Level fromPx={fromPx} toPx={toPx} plusAt={run?.facing === -1 ? 'from' : 'to'} {...stands} />;
}

/** Where the feet or the tip are to be set next, while the instrument still stands elsewhere. */
export function NextPlace({ px, surfacePx }: DrawnPlace) {
  const [fromPx = 0, toPx] = px;
  if (toPx === undefined) {
    return (
      <g class="ghost">
        <circle cx={fromPx} cy={surfacePx - 7} r={6} />
      </g>
    );
  }
  const foot = footWidth(fromPx, toPx);
  return (
    <g class="ghost">
      {px.map((each) => (
        <rect key={each} x={each - foot / 2} y={surfacePx - feetPx - 1} width={foot} height={feetPx} />
      ))}
    </g>
  );
}
