import { stationsOf } from '../../shared/survey/way.ts';
import { across } from '../drawing/across.ts';
import { heightLabel } from '../drawing/heights-axis.ts';
import { Profile } from '../drawing/profile.tsx';
import { textWidth } from '../drawing/text-width.ts';
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
  const axis = across(widthPx, coveredMm, setup.lengthMm, gutterPx(survey, widthPx < 520 ? 54 : 66));
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

/** Room for the words of the height axis, which grow with the heights. */
function gutterPx(survey: SurveyResult | null, leastPx: number): number {
  const highest = Math.max(
    0,
    ...(survey?.stations ?? []).map(({ heightUm, uUm }) => Math.abs(heightUm) + 2 * uUm),
  );
  return Math.max(leastPx, 10 + textWidth(heightLabel(1.2 * highest, 10), 12.5));
}
