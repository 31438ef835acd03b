import type { Session } from '../../shared/session/fold.ts';
import { BedDrawing } from '../drawing/bed/bed-drawing.tsx';
import type { BedSession } from '../drawing/bed/ladder-rows.ts';
import { LineDrawing } from '../drawing/line-drawing.tsx';
import type { OnPart } from '../drawing/part.tsx';
import { PlateDrawing } from '../drawing/plate/plate-drawing.tsx';
import type { PlateSession } from '../drawing/plate/plate-session.ts';
import { useSize } from '../drawing/use-size.ts';
import { usePick } from '../state/page.ts';
import type { Reference } from '../state/page-state.ts';
import type { SurveyResult } from '../state/survey-result.ts';
import { trueShape } from '../state/true-shape.ts';
import { LessonArrows } from './lesson-arrows.tsx';

export interface DrawingProps extends OnPart {
  readonly survey: SurveyResult | null;
  readonly reference: Reference;
  /** Whether the true shape of a simulated part is laid over. */
  readonly laidOver?: boolean;
}

const isBed = (session: Session): session is BedSession => session.setup.kind === 'bed';
const isPlate = (session: Session): session is PlateSession => session.setup.kind === 'plate';

/** What the scale of ink and its words take beneath a plate, px. */
const underPlatePx = 62;

/** The one drawing of the sheet: a ladder for a bed, a plan for a plate, part and profile for everything else. */
export function Drawing({ survey, reference, laidOver = false, stale = false, ...on }: DrawingProps) {
  const { ref, widthPx, heightPx } = useSize<HTMLDivElement>();
  const relief = usePick((state) => state.relief);
  const passes = usePick((state) => state.passes);
  const { session } = on;
  const place = session.ended ? null : session.next;
  const truth = laidOver ? session.header.simulated?.truthUm : undefined;
  const result = survey?.result ?? null;
  const planned = { ...on, stale, place, result, widthPx, ...(truth && { truth }) };
  const roomy = widthPx > 800;
  return (
    <div
      class={`room ${isPlate(session) && roomy ? 'fixed' : ''} ${session.ended ? '' : 'underway'}`}
      ref={ref}
    >
      <LessonArrows room={ref} />
      {widthPx === 0 ? null : isBed(session) ? (
        <BedDrawing {...planned} session={session} passes={passes && session.ended} />
      ) : isPlate(session) ? (
        <PlateDrawing
          {...planned}
          session={session}
          relief={relief}
          {...(roomy && { heightPx: heightPx - underPlatePx })}
        />
      ) : (
        <LineDrawing
          {...on}
          stale={stale}
          survey={survey}
          truth={truth && survey ? trueShape(session, survey, reference) : []}
          widthPx={widthPx}
          passes={passes && session.ended}
        />
      )}
    </div>
  );
}
