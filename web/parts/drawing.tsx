import { stationsOf } from '../../shared/survey/way.ts';
import { across } from '../drawing/across.ts';
import { Profile } from '../drawing/profile.tsx';
import { useSize } from '../drawing/use-size.ts';
import { Way, type WayProps } from '../drawing/way.tsx';
import type { ReducedStation, SurveyResult } from '../state/survey-result.ts';

interface DrawingProps extends Omit<WayProps, 'across'> {
  readonly survey: SurveyResult | null;
  readonly truth?: readonly ReducedStation[];
}

/** The part and its profile, one under the other on one x axis. */
export function Drawing({ survey, truth = [], ...way }: DrawingProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const { setup } = way.session;
  const coveredMm = stationsOf(setup).at(-1)?.xMm ?? setup.lengthMm;
  const axis = across(widthPx, coveredMm, setup.lengthMm, widthPx < 520 ? 54 : 66);
  return (
    <section class="drawing" ref={ref} aria-label="Drawing of the way and its profile">
      {widthPx > 0 && (
        <>
          <Way {...way} across={axis} />
          <Profile across={axis} session={way.session} survey={survey} truth={truth} />
        </>
      )}
    </section>
  );
}
