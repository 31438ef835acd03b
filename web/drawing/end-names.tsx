import type { Session } from '../../shared/session/fold.ts';
import type { Run } from '../../shared/survey/plan.ts';
import { directionOf, runNow } from '../state/on-plan.ts';
import { kindWords } from '../words/kinds.ts';
import type { Across } from './across.ts';
import { fitText, textWidth } from './text-width.ts';

interface EndNamesProps {
  readonly across: Across;
  readonly session: Session;
  readonly surfacePx: number;
  /** Whether this is where one walks now. */
  readonly busy: boolean;
  /** Where an indicator stands that reaches up to the words; null when none does. */
  readonly avoidPx: number | null;
  /** Whether the ends are named here. */
  readonly named: boolean;
}

const sizePx = 12.5;
const arrowPx = 34;
const apartPx = 16;
/** How far the words move out of the way of an indicator. */
const besidePx = 90;

/** The two ends by name, each with a leader down to its corner of the metal, and which way it is walked. */
export function EndNames({ across, session, surfacePx, busy, avoidPx, named }: EndNamesProps) {
  const { setup } = session;
  if (!('startEnd' in setup)) return null;
  const { leftPx, rightPx } = across;
  const centre = (leftPx + rightPx) / 2;
  const taken = avoidPx !== null && Math.abs(avoidPx - centre) < besidePx;
  const middle = taken ? centre + besidePx : centre;
  const room = (rightPx - leftPx) / 2 - apartPx;
  const [start, far] = [fitText(setup.startEnd, sizePx, room), fitText(setup.farEnd, sizePx, room)];
  const run = busy && session.next ? runNow(session) : undefined;
  const out = run !== undefined && directionOf(session, run) === 1;
  const direction = run ? wordOf(session, run, out) : '';
  const half = textWidth(direction, sizePx) / 2;
  const longest = Math.max(textWidth(start, sizePx), textWidth(far, sizePx));
  const fits =
    (!named || leftPx + 7 + longest + apartPx < middle - half - arrowPx) &&
    middle + half + arrowPx + (named ? longest + apartPx : 0) < rightPx;
  return (
    <g>
      {named && <path class="thin" d={`M${leftPx} 3V${surfacePx - 4}M${rightPx} 3V${surfacePx - 4}`} />}
      {named && (
        <>
          <text x={leftPx + 7} y={12}>
            {start}
          </text>
          <text x={rightPx - 7} y={12} text-anchor="end">
            {far}
          </text>
        </>
      )}
      {run && fits && (
        <g>
          <text x={middle} y={12} text-anchor="middle">
            {direction}
          </text>
          {out ? (
            <path class="thin" d={`M${middle + half + 6} 8h24m-7 -4l7 4l-7 4`} />
          ) : (
            <path class="thin" d={`M${middle - half - 6} 8h-24m7 -4l-7 4l7 4`} />
          )}
        </g>
      )}
    </g>
  );
}

function wordOf({ setup }: Session, run: Run, out: boolean): string {
  const { turn } = kindWords[setup.kind];
  if (turn && run.reads === 'height') return run.artefact?.turned ? turn.done : 'as it stands';
  return out ? 'going out' : 'coming back';
}
