import { across } from '../drawing/across.ts';
import { heightLabel } from '../drawing/heights-axis.ts';
import { type OnPart, Part } from '../drawing/part.tsx';
import { Profile } from '../drawing/profile.tsx';
import { textWidth } from '../drawing/text-width.ts';
import { useSize } from '../drawing/use-size.ts';
import type { ReducedStation, SurveyResult } from '../state/survey-result.ts';
import { sidesOf } from '../words/profile.ts';

export interface DrawingProps extends OnPart {
  readonly survey: SurveyResult | null;
  readonly truth?: readonly (readonly ReducedStation[])[];
}

/** The part, line by line, and its profile, one under the other on one x axis. */
export function Drawing({ survey, truth = [], ...onPart }: DrawingProps) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const { session } = onPart;
  const { plan, setup } = session;
  const coveredMm = Math.max(...plan.stations.map(({ xMm }) => xMm));
  const lengthMm = 'lengthMm' in setup ? setup.lengthMm : coveredMm;
  const axis = across(widthPx, coveredMm, lengthMm, gutterPx(onPart, survey, widthPx < 520 ? 54 : 66));
  const lines = Object.keys(plan.lines);
  return (
    <section class="drawing" ref={ref} aria-label="Drawing of the part and its profile">
      {widthPx > 0 && (
        <>
          {lines.map((line, k) => (
            <Part
              key={line}
              {...onPart}
              across={axis}
              line={line}
              title={lines.length > 1 ? line : null}
              first={k === 0}
              last={k === lines.length - 1}
            />
          ))}
          <Profile across={axis} session={session} survey={survey} truth={truth} />
        </>
      )}
    </section>
  );
}

/** Room for the words of the height axis, which grow with the heights. */
function gutterPx({ session }: OnPart, survey: SurveyResult | null, leastPx: number): number {
  const stations = (survey?.lines ?? []).flatMap((line) => line.stations);
  const highest = Math.max(0, ...stations.map(({ heightUm, uUm }) => Math.abs(heightUm) + 2 * uUm));
  const label = heightLabel(-1.2 * highest, 10, sidesOf(session));
  return Math.max(leastPx, 10 + textWidth(label, 12.5));
}
