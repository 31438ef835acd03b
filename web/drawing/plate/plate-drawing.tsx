import { useMemo } from 'preact/hooks';
import type { Result } from '../../../shared/sheet/result.ts';
import { HeightsTable } from '../heights-table.tsx';
import { heightField } from './height-field.ts';
import { knownAnywhere, latticeOf } from './lattice.ts';
import { planView } from './plan-view.ts';
import { plateClosures } from './plate-closures.ts';
import { type OnPlate, PlatePlan } from './plate-plan.tsx';
import { PlateRelief } from './plate-relief.tsx';
import { coveredMm } from './plate-session.ts';
import { SoFar } from './so-far.tsx';
import { TintScale } from './tint-scale.tsx';
import { tintSteps } from './tint-steps.ts';
import { trueHeights } from './true-heights.ts';

export interface PlateDrawingProps extends OnPlate {
  /** What the readings so far come to; null before there is anything. */
  readonly result: Result | null;
  /** True heights of a simulated plate by station, µm, when they are to be laid over. */
  readonly truth?: Readonly<Record<string, number>>;
  readonly widthPx: number;
  /** Height that the plan may take; left out: as much as the width allows. */
  readonly heightPx?: number;
  /** The exaggerated relief in place of the plan. */
  readonly relief?: boolean;
}

const asidePx = 330;
/** From this width on the words stand beside the plan. */
const besideFromPx = 860;
const besidePx = 30;

/** A plate: plan or relief in the ink of its heights, and beside it what is known so far. */
export function PlateDrawing({ result, truth, widthPx, heightPx, relief = false, ...on }: PlateDrawingProps) {
  const { session } = on;
  const beside = widthPx >= besideFromPx;
  const planWidthPx = beside ? widthPx - asidePx - besidePx : widthPx;
  const mostHeightPx = heightPx ?? (beside ? 0.5 : 0.8) * widthPx;
  const view = useMemo(
    () => planView(session, planWidthPx, mostHeightPx),
    [session.setup, planWidthPx, mostHeightPx],
  );
  const { field, steps, stations, closures, inked } = useMemo(() => {
    const known = session.plan.stations.flatMap(({ name, xMm }) => {
      const height = result?.stations[name];
      return height ? [{ name, xMm, ...height }] : [];
    });
    const field = heightField(session, new Map(known.map(({ name, heightUm }) => [name, heightUm])));
    return {
      stations: known,
      field,
      inked: knownAnywhere(latticeOf(field, coveredMm(session), 16, 16)),
      steps: tintSteps(
        known.map(({ heightUm }) => heightUm),
        Math.max(0, ...known.map(({ uUm }) => uUm)),
      ),
      closures: plateClosures(session, result),
    };
  }, [session.plan, session.counted, result]);
  const over = useMemo(
    () => (truth ? heightField(session, trueHeights(session, result, truth)) : null),
    [session.plan, result, truth],
  );
  return (
    <section
      class={`drawing plate ${beside ? 'beside' : ''}`}
      aria-label="Drawing of the plate, and what is known of it"
    >
      <div style={{ width: `${view.widthPx}px` }}>
        {relief ? (
          <PlateRelief session={session} field={field} steps={steps} widthPx={view.widthPx} />
        ) : (
          <PlatePlan {...on} view={view} field={field} steps={steps} closures={closures} truth={over} />
        )}
        {inked && (
          <TintScale
            steps={steps}
            widthPx={view.widthPx}
            notes={[
              `Height over the ${result?.reference === 'minimumZone' ? 'minimum-zone' : 'least-squares'} plane.`,
              ...(closures.length > 0 && !relief
                ? ['Beside the names: how far the lines fail to close there.']
                : []),
              ...(over && !relief ? ['Dashed: contours of the true shape of the simulated plate.'] : []),
            ]}
          />
        )}
      </div>
      <SoFar session={session} result={result} closures={closures} />
      <div class="unseen">
        <HeightsTable stations={stations} sides={{ above: 'high', below: 'low' }} />
      </div>
    </section>
  );
}
