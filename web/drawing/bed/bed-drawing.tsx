import type { Result } from '../../../shared/sheet/result.ts';
import type { ReducedStation } from '../../state/survey-result.ts';
import { lengthText } from '../../words/length.ts';
import { across } from '../across.ts';
import { heightLabel } from '../heights-axis.ts';
import { PassStrips } from '../pass-strips.tsx';
import { textWidth } from '../text-width.ts';
import { bedHeights, trueBedHeights } from './bed-heights.ts';
import { BedProfile } from './bed-profile.tsx';
import { Ladder, type LadderProps } from './ladder.tsx';
import { LeanKey } from './lean-key.tsx';
import { leanScale } from './lean-scale.ts';

export interface BedDrawingProps extends LadderProps {
  /** What the readings so far come to; null before there is anything. */
  readonly result: Result | null;
  /** True heights of a simulated bed by station, µm, when they are to be laid over. */
  readonly truth?: Readonly<Record<string, number>>;
  readonly widthPx: number;
  /** What to scrape stands in the place of the profiles. */
  readonly passes?: boolean;
}

/** A bed: ladder, and both profiles or what to scrape, one under the other on one x axis. */
export function BedDrawing({ result, truth, widthPx, passes = false, ...ladder }: BedDrawingProps) {
  const { session } = ladder;
  const { setup, plan } = session;
  const reference = result?.reference ?? 'ends';
  const heights = bedHeights(session, reference);
  const all = [...heights.front, ...heights.rear];
  const coveredMm = Math.max(...plan.stations.map(({ xMm }) => xMm));
  const gaugePx = 20 + textWidth(lengthText(setup.gaugeMm, setup.lengthUnit), 12.5);
  const axis = across(
    widthPx,
    coveredMm,
    setup.lengthMm,
    gutterPx(all, Math.max(widthPx < 520 ? 54 : 66, gaugePx)),
  );
  const scale = leanScale(
    heights.leans,
    setup.baseMm * setup.crossEvery * axis.pxPerMm,
    widthPx - axis.px(coveredMm) - 4,
  );
  const corner = plan.lines.rear?.at(-1);
  const wind =
    result?.figures.wind && corner && all.some(({ name }) => name === corner) ? result.figures.wind : null;
  const [first] = heights.leans;
  const strips = !passes
    ? []
    : (['front', 'rear'] as const).flatMap((line) => {
        const metal = result?.metal[line];
        const whole = plan.lines[line]?.every((name) => metal?.stations[name]);
        return metal && whole ? [{ line, metal }] : [];
      });
  return (
    <section class="drawing bed" aria-label="Drawing of the bed, its profiles and what to scrape">
      <Ladder
        {...ladder}
        across={axis}
        heights={heights}
        scale={scale}
        wind={wind && corner ? { valueUm: wind.value, uUm: wind.u, corner } : null}
      />
      {heights.leans.length > 1 && first && (
        <LeanKey scale={scale} from={first.from} to={first.to} twist={result?.figures.twist} />
      )}
      {strips.length < 2 && (
        <BedProfile
          across={axis}
          session={session}
          reference={reference}
          heights={heights}
          truth={truth ? trueBedHeights(session, reference, truth) : null}
        />
      )}
      {strips.length === 2 && <PassStrips across={axis} stations={plan.stations} strips={strips} />}
    </section>
  );
}

/** Room for the words of the height axis, which grow with the heights. */
function gutterPx(stations: readonly ReducedStation[], leastPx: number): number {
  const highest = Math.max(0, ...stations.map(({ heightUm, uUm }) => Math.abs(heightUm) + 2 * uUm));
  return Math.max(leastPx, 10 + textWidth(heightLabel(1.2 * highest, 10), 12.5));
}
