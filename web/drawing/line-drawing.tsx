import type { ReducedStation, SurveyResult } from '../state/survey-result.ts';
import { sidesOf } from '../words/profile.ts';
import { across } from './across.ts';
import { heightLabel } from './heights-axis.ts';
import { type OnPart, Part } from './part.tsx';
import { PassStrips } from './pass-strips.tsx';
import { Profile } from './profile.tsx';
import { textWidth } from './text-width.ts';

interface LineDrawingProps extends OnPart {
  readonly survey: SurveyResult | null;
  /** True shape of a simulated part, line by line, when it is laid over. */
  readonly truth: readonly (readonly ReducedStation[])[];
  readonly widthPx: number;
  /** What to scrape stands in the place of the profiles. */
  readonly passes?: boolean;
}

/** What is measured along lines: the part, line by line, and its profile, one under the other on one x axis. */
export function LineDrawing({ survey, truth, widthPx, passes = false, ...onPart }: LineDrawingProps) {
  const { session } = onPart;
  const { plan, setup } = session;
  const coveredMm = Math.max(...plan.stations.map(({ xMm }) => xMm));
  const lengthMm = 'lengthMm' in setup ? setup.lengthMm : coveredMm;
  const axis = across(widthPx, coveredMm, lengthMm, gutterPx(onPart, survey, widthPx < 520 ? 54 : 66));
  const lines = Object.keys(plan.lines);
  const strips = passes
    ? lines.flatMap((line) => {
        const metal = survey?.result.metal[line];
        return metal ? [{ line, metal }] : [];
      })
    : [];
  return (
    <section class="drawing" aria-label="Drawing of the part and its profile">
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
      {strips.length > 0 ? (
        <PassStrips across={axis} stations={plan.stations} strips={strips} />
      ) : (
        <Profile across={axis} session={session} survey={survey} truth={truth} />
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
