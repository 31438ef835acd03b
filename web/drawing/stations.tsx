import type { Session } from '../../shared/session/fold.ts';
import { placementKey, stationsOf, type WalkId } from '../../shared/survey/way.ts';
import { textWidth } from './text-width.ts';
import { thinLabels } from './thin-labels.ts';

interface StationsProps {
  readonly session: Session;
  readonly pxOf: ReadonlyMap<string, number>;
  /** Underside of the metal, where the ticks begin. */
  readonly yPx: number;
  /** Baseline of the names. */
  readonly labelPx: number;
}

/** Ticks and names: bold where this walk has been, in the live colour where the level goes next. */
export function Stations({ session, pxOf, yPx, labelPx }: StationsProps) {
  const next = session.ended ? null : session.next;
  const done = readStations(session, next?.walk ?? session.walks.at(-1) ?? 'out');
  const names = stationsOf(session.setup).map(({ name }) => name);
  const isNext = (name: string) => next?.from === name || next?.to === name;
  const px = (name: string) => pxOf.get(name) ?? 0;
  const labels = names.map((name) => ({
    px: px(name),
    widthPx: textWidth(name, 12.5, true),
    must: isNext(name),
  }));
  // Feet closer together than their names: one label for the pair.
  const tight = next !== null && px(next.to) - px(next.from) < textWidth(next.to, 12.5, true) + 8;
  const shown = tight ? withPair(labels, names, next) : thinLabels(labels);
  return (
    <g>
      {names.map((name, k) => {
        const state = isNext(name) ? 'now' : done.has(name) ? 'done' : '';
        return (
          <g key={name}>
            <path
              class={`tick ${done.has(name) ? 'done' : ''}`}
              d={`M${px(name)} ${yPx}v${done.has(name) ? 9 : 7}`}
            />
            {shown.has(k) && (
              <text class={state} x={px(name)} y={labelPx} text-anchor="middle">
                {name}
              </text>
            )}
          </g>
        );
      })}
      {tight && next && (
        <text class="now" x={pairPx(px(next.from), px(next.to), pxOf)} y={labelPx} text-anchor="middle">
          {`${next.from}–${next.to}`}
        </text>
      )}
    </g>
  );
}

/** The middle of the pair, moved inwards where its label would leave the part. */
function pairPx(fromPx: number, toPx: number, pxOf: ReadonlyMap<string, number>): number {
  const all = [...pxOf.values()];
  return Math.min(Math.max((fromPx + toPx) / 2, Math.min(...all) + 12), Math.max(...all) - 12);
}

function withPair(
  labels: readonly { px: number; widthPx: number; must: boolean }[],
  names: readonly string[],
  next: { from: string; to: string },
): ReadonlySet<number> {
  const pair = names.indexOf(next.from);
  const widthPx = textWidth(`${next.from}–${next.to}`, 12.5, true) + 24;
  const merged = labels.map((label, k) =>
    k === pair ? { ...label, widthPx, must: true } : { ...label, must: false },
  );
  const shown = new Set(thinLabels(merged));
  shown.delete(pair);
  return shown;
}

/** Stations on which a foot has stood for a reading that counts, in this walk. */
function readStations(session: Session, walk: WalkId): ReadonlySet<string> {
  const read = new Set<string>();
  for (const place of session.plan) {
    if (place.walk === walk && session.counted.has(placementKey(place))) read.add(place.from).add(place.to);
  }
  return read;
}
