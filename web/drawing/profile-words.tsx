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

interface PlacedWords {
  readonly text: string;
  readonly sizePx: number;
  readonly px: number;
  readonly yPx: number;
  readonly halfPx: number;
}

/** Where the words of the line in focus stand: clear of all curves and their bands. */
function calloutOf(props: WordsProps): (PlacedWords & { line: LineResult }) | null {
  const { across, session, survey, heightPx, yPx } = props;
  const line = lineInFocus(props);
  const worst = furthest(line?.stations ?? []);
  const words = survey && line && calloutText(session, survey, line);
  if (!worst || !words) return null;
  const name = survey.lines.length > 1 ? `${line.name}: ` : '';
  const { text, sizePx } = fitted(across, `${name}${words}`, session.ended ? '' : ' so far');
  const halfPx = textWidth(text, sizePx, true) / 2;
  const px = Math.min(
    Math.max(across.px(worst.xMm), across.leftPx + halfPx + 4),
    across.rightPx - halfPx - 4,
  );
  const low = worst.heightUm <= 0;
  const all = survey.lines.flatMap(({ stations }) => stations);
  const near = all.filter(({ xMm }) => Math.abs(across.px(xMm) - px) < halfPx + 12);
  const edges = near.map(({ heightUm, uUm }) => yPx(heightUm + (low ? -2 : 2) * uUm));
  const clear = low ? Math.max(...edges) + 20 : Math.min(...edges) - 10;
  return { line, text, sizePx, px, halfPx, yPx: Math.min(Math.max(clear, 14), heightPx - 5) };
}

/** The words as large as they go: "so far" is left out first, then they get smaller. */
function fitted(
  { widthPx, leftPx, rightPx }: Across,
  words: string,
  soFar: string,
): { text: string; sizePx: number } {
  const room = rightPx - leftPx - 8;
  const usual = widthPx < 520 ? 13.5 : 16;
  const long = `${words}${soFar}`;
  const text = textWidth(long, usual, true) <= room ? long : words;
  return { text, sizePx: Math.max(11, Math.min(usual, (usual * room) / textWidth(text, usual, true))) };
}

/** Which station stands how high or low. */
export function Callout(props: WordsProps) {
  const placed = calloutOf(props);
  if (!placed) return null;
  return (
    <text
      class="callout"
      style={{ fontSize: `${placed.sizePx}px` }}
      x={placed.px}
      y={placed.yPx}
      text-anchor="middle"
    >
      {placed.text}
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

/** Several curves each carry the name of their line, where they are furthest apart; the callout names its own. */
export function CurveNames(props: WordsProps) {
  const { across, survey, heightPx, yPx } = props;
  const lines = survey?.lines ?? [];
  const callout = calloutOf(props);
  if (lines.length < 2) return null;
  const heightAt = (x: number, { stations }: LineResult) =>
    stations.find(({ xMm }) => Math.abs(xMm - x) < 1e-6)?.heightUm;
  return (
    <g>
      {lines.map((line) => {
        if (line === callout?.line) return null;
        const half = textWidth(line.name, 12.5, true) / 2;
        const inside = (px: number) =>
          Math.min(Math.max(px, across.leftPx + half + 4), across.rightPx - half - 4);
        const spots = line.stations.map(({ xMm, heightUm, uUm }) => {
          const gaps = lines.flatMap((other) =>
            other === line ? [] : heightUm - (heightAt(xMm, other) ?? 0),
          );
          const gap = gaps.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a));
          const up = gap >= 0;
          const edge = yPx(heightUm + (up ? 2 : -2) * uUm) + (up ? -8 : 17);
          return { px: inside(across.px(xMm)), y: Math.min(Math.max(edge, 12), heightPx - 4), gap };
        });
        const free = spots.filter(
          ({ px, y }) =>
            !callout ||
            Math.abs(px - callout.px) > callout.halfPx + half + 8 ||
            Math.abs(y - callout.yPx) > 20,
        );
        const [first, ...rest] = free.length > 0 ? free : spots;
        if (!first) return null;
        const best = rest.reduce((a, b) => (Math.abs(b.gap) > Math.abs(a.gap) ? b : a), first);
        return (
          <text key={line.name} class="curve-name" x={best.px} y={best.y} text-anchor="middle">
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
  const word = run.reads === 'tilt' ? 'not walked yet' : 'not read yet';
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
