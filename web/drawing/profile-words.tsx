import type { Session } from '../../shared/session/fold.ts';
import { stationsOf } from '../../shared/survey/way.ts';
import { side, stationSentence } from '../../shared/words.ts';
import { lastTake } from '../state/page-state.ts';
import type { ReducedStation, SurveyResult } from '../state/survey-result.ts';
import type { Across } from './across.ts';
import { textWidth } from './text-width.ts';

interface WordsProps {
  readonly across: Across;
  readonly session: Session;
  readonly survey: SurveyResult | null;
  readonly heightPx: number;
}

/** The station that stands furthest off its reference. */
export function furthest(stations: readonly ReducedStation[]): ReducedStation | null {
  return stations.reduce<ReducedStation | null>(
    (best, station) => (best && Math.abs(best.heightUm) >= Math.abs(station.heightUm) ? best : station),
    null,
  );
}

/** Which station stands how high or low, written clear of the curve and its band. */
export function Callout({
  across,
  session,
  survey,
  heightPx,
  yPx,
}: WordsProps & { yPx(um: number): number }) {
  const stations = survey?.stations ?? [];
  const worst = furthest(stations);
  if (!worst || stations.length < 3) return null;
  // One number of digits for the whole profile: a station on its own reference claims no more than the others.
  const uUm = Math.max(...stations.map((station) => station.uUm));
  const text = `${stationSentence(worst.name, worst.heightUm, uUm)}${session.ended ? '' : ' so far'}`;
  const sizePx = across.widthPx < 520 ? 13.5 : 16;
  const half = textWidth(text, sizePx, true) / 2;
  const px = Math.min(Math.max(across.px(worst.xMm), across.leftPx + half + 4), across.rightPx - half - 4);
  const low = side(worst.heightUm, uUm) !== 'HIGH';
  const near = stations.filter(({ xMm }) => Math.abs(across.px(xMm) - px) < half + 12);
  const edges = near.map(({ heightUm, uUm }) => yPx(heightUm + (low ? -2 : 2) * uUm));
  const clear = low ? Math.max(...edges) + 25 : Math.min(...edges) - 14;
  const newest = lastTake(session)?.event;
  const fresh = stations.find(
    ({ name }) => name === (newest?.place.walk === 'back' ? newest.place.from : newest?.place.to),
  );
  return (
    <g>
      <text
        class="callout"
        style={{ fontSize: `${sizePx}px` }}
        x={px}
        y={Math.min(Math.max(clear, 14), heightPx - 5)}
        text-anchor="middle"
      >
        {text}
      </text>
      {fresh && newest && !session.ended && (
        <circle key={newest.seq} class="fresh" cx={across.px(fresh.xMm)} cy={yPx(fresh.heightUm)} r={4} />
      )}
    </g>
  );
}

/** What is not known yet is said, so that it isn't taken for flat. */
export function NotWalked({
  across,
  session,
  survey,
  heightPx,
  middlePx,
}: WordsProps & { middlePx: number }) {
  const all = stationsOf(session.setup);
  const known = survey?.stations ?? [];
  const first = all[0]?.xMm ?? 0;
  const last = all.at(-1)?.xMm ?? 0;
  const text = notKnown(session, survey);
  const regions = known.length
    ? [
        { from: first, to: known[0]?.xMm ?? first, edge: 'to' as const },
        { from: known.at(-1)?.xMm ?? last, to: last, edge: 'from' as const },
      ]
    : [{ from: first, to: last, edge: null }];
  return (
    <g>
      {regions.map(({ from, to, edge }) => {
        const fromPx = across.px(from);
        const toPx = across.px(to);
        if (toPx - fromPx < textWidth(text, 12.5) + 16) return null;
        return (
          <g key={from}>
            {edge && <path class="boundary" d={`M${edge === 'from' ? fromPx : toPx} 0V${heightPx}`} />}
            <text x={(fromPx + toPx) / 2} y={middlePx} text-anchor="middle">
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function notKnown({ ended }: Session, survey: SurveyResult | null): string {
  if (survey?.cutAt) return ended ? 'not tied' : 'not tied yet';
  return ended ? 'not walked' : 'not walked yet';
}
