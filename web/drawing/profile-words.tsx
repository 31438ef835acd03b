import type { Session } from '../../shared/session/fold.ts';
import { directionOf, runNow, runOf, stationsAlong } from '../state/on-plan.ts';
import { lastTake } from '../state/page-state.ts';
import type { LineResult, ReducedStation, SurveyResult } from '../state/survey-result.ts';
import { calloutText } from '../words/profile.ts';
import type { Across } from './across.ts';
import type { HeightsAxis } from './heights-axis.ts';
import { textWidth } from './text-width.ts';

interface WordsProps {
  readonly across: Across;
  readonly session: Session;
  readonly survey: SurveyResult | null;
  readonly heightPx: number;
  yPx(um: number): number;
}

/** The station that stands furthest off its reference. */
export function furthest(stations: readonly ReducedStation[]): ReducedStation | null {
  return stations.reduce<ReducedStation | null>(
    (best, station) => (best && Math.abs(best.heightUm) >= Math.abs(station.heightUm) ? best : station),
    null,
  );
}

/** The line that one is busy with; on a finished sheet, the one that is furthest off. */
function lineInFocus({ session, survey }: WordsProps): LineResult | null {
  const lines = survey?.lines ?? [];
  const busy = session.ended ? undefined : runNow(session)?.line;
  const worst = furthest(lines.flatMap(({ stations }) => stations));
  return (
    lines.find(({ name }) => name === busy) ??
    lines.find(({ stations }) => worst !== null && stations.includes(worst)) ??
    null
  );
}

/** Which station stands how high or low, written clear of the curves and their bands. */
export function Callout(props: WordsProps) {
  const { across, session, survey, heightPx, yPx } = props;
  const line = lineInFocus(props);
  const worst = furthest(line?.stations ?? []);
  const words = survey && line && calloutText(session, survey, line);
  if (!worst || !words) return null;
  const text = `${words}${session.ended ? '' : ' so far'}`;
  const sizePx = across.widthPx < 520 ? 13.5 : 16;
  const half = textWidth(text, sizePx, true) / 2;
  const px = Math.min(Math.max(across.px(worst.xMm), across.leftPx + half + 4), across.rightPx - half - 4);
  const low = worst.heightUm <= 0;
  const all = survey.lines.flatMap(({ stations }) => stations);
  const near = all.filter(({ xMm }) => Math.abs(across.px(xMm) - px) < half + 12);
  const edges = near.map(({ heightUm, uUm }) => yPx(heightUm + (low ? -2 : 2) * uUm));
  const clear = low ? Math.max(...edges) + 20 : Math.min(...edges) - 10;
  return (
    <text
      class="callout"
      style={{ fontSize: `${sizePx}px` }}
      x={px}
      y={Math.min(Math.max(clear, 14), heightPx - 5)}
      text-anchor="middle"
    >
      {text}
    </text>
  );
}

/** A ring round what the last take has added. */
export function Fresh({ across, session, survey, yPx }: WordsProps) {
  const newest = lastTake(session)?.event;
  const run = newest && runOf(session, newest.place.run);
  if (!newest || !run || session.ended) return null;
  const name = directionOf(session, run) === 1 ? newest.place.at.at(-1) : newest.place.at[0];
  const fresh = survey?.lines.flatMap(({ stations }) => stations).find((station) => station.name === name);
  if (!fresh) return null;
  return <circle key={newest.seq} class="fresh" cx={across.px(fresh.xMm)} cy={yPx(fresh.heightUm)} r={4} />;
}

/** Several curves each carry the name of their line, where they are furthest from one another. */
export function CurveNames({ across, survey, heightPx, yPx }: WordsProps) {
  const lines = survey?.lines ?? [];
  if (lines.length < 2) return null;
  return (
    <g>
      {lines.map((line) => {
        const others = lines.filter((other) => other !== line);
        const heightAt = (x: number, { stations }: LineResult) =>
          stations.find(({ xMm }) => Math.abs(xMm - x) < 1e-6)?.heightUm;
        const apart = line.stations.map((station) => {
          const gaps = others.map((other) => station.heightUm - (heightAt(station.xMm, other) ?? 0));
          return { station, gap: gaps.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a)) };
        });
        const best = apart.reduce((a, b) => (Math.abs(b.gap) > Math.abs(a.gap) ? b : a));
        const up = best.gap >= 0;
        const edge = yPx(best.station.heightUm + (up ? 2 : -2) * best.station.uUm);
        const half = textWidth(line.name, 12.5, true) / 2;
        const px = Math.min(
          Math.max(across.px(best.station.xMm), across.leftPx + half + 4),
          across.rightPx - half - 4,
        );
        return (
          <text
            key={line.name}
            class="curve-name"
            x={px}
            y={Math.min(Math.max(edge + (up ? -8 : 17), 12), heightPx - 4)}
            text-anchor="middle"
          >
            {line.name}
          </text>
        );
      })}
    </g>
  );
}

/** What is not known yet is said, so that it isn't taken for flat. */
export function NotWalked(props: WordsProps & { readonly axis: HeightsAxis }) {
  const { across, session, survey, heightPx, yPx, axis } = props;
  const run = runNow(session);
  if (session.ended || !run) return null;
  const all = stationsAlong(session, run.line);
  const known = survey?.lines.find(({ name }) => name === run.line)?.stations ?? [];
  const first = all[0]?.xMm ?? 0;
  const last = all.at(-1)?.xMm ?? 0;
  const word = run.reads === 'tilt' ? 'not walked yet' : 'not swept yet';
  const text = survey?.cutAt ? 'not tied yet' : word;
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
            <text class="clear" x={(fromPx + toPx) / 2} y={betweenLines(axis, yPx)} text-anchor="middle">
              {text}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** Baseline of words that lie on no line of the grid, and never on the reference. */
function betweenLines({ ticksUm, stepUm }: HeightsAxis, yPx: (um: number) => number): number {
  const middles = ticksUm.slice(0, -1).map((um) => yPx(um + stepUm / 2));
  const chain = yPx(0);
  const off = middles.filter((px) => Math.abs(px - chain) >= 13);
  const best = (off.length > 0 ? off : middles).reduce((a, b) =>
    Math.abs(b - chain) < Math.abs(a - chain) ? b : a,
  );
  return best + 4;
}
