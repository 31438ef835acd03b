import type { Session } from '../../shared/session/fold.ts';
import { readOn, runNow } from '../state/on-plan.ts';
import { textWidth } from './text-width.ts';
import { thinLabels } from './thin-labels.ts';

interface StationsProps {
  readonly session: Session;
  readonly line: string;
  readonly pxOf: ReadonlyMap<string, number>;
  /** Underside of the metal, where the ticks begin. */
  readonly yPx: number;
  /** Baseline of the names. */
  readonly labelPx: number;
}

/** Ticks and names: bold where this run has been, in the live colour where the instrument goes next. */
export function Stations({ session, line, pxOf, yPx, labelPx }: StationsProps) {
  const names = session.plan.lines[line] ?? [];
  const next = session.ended ? [] : (session.next?.at ?? []).filter((name) => names.includes(name));
  const now = runNow(session);
  const lately = now?.line === line ? now : session.runs.find((run) => run.line === line);
  const done = session.ended ? readAnywhere(session) : readOn(session, lately);
  const isNext = (name: string) => next.includes(name);
  const px = (name: string) => pxOf.get(name) ?? 0;
  const labels = names.map((name) => ({
    px: px(name),
    widthPx: textWidth(name, 12.5, true),
    must: isNext(name),
  }));
  // Feet closer together than their names: one label for the pair.
  const [from, to] = next;
  const pair = from !== undefined && to !== undefined ? ([from, to] as const) : null;
  const tight = pair !== null && px(pair[1]) - px(pair[0]) < textWidth(pair[1], 12.5, true) + 8;
  const shown = tight ? withPair(labels, names, pair) : thinLabels(labels);
  return (
    <g>
      {names.map((name, k) => {
        const state = isNext(name) ? 'now' : done.has(name) ? 'done' : '';
        return (
          <g key={name}>
            <path
              data-at={name}
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
      {tight && (
        <text class="now" x={pairPx(px(pair[0]), px(pair[1]), pxOf)} y={labelPx} text-anchor="middle">
          {pair.join('–')}
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
  [from, to]: readonly [string, string],
): ReadonlySet<number> {
  const pair = names.indexOf(from);
  const widthPx = textWidth(`${from}–${to}`, 12.5, true) + 24;
  const merged = labels.map((label, k) =>
    k === pair ? { ...label, widthPx, must: true } : { ...label, must: false },
  );
  const shown = new Set(thinLabels(merged));
  shown.delete(pair);
  return shown;
}

/** Stations that have a reading that counts, whatever the run. */
function readAnywhere(session: Session): ReadonlySet<string> {
  return new Set([...session.counted.values()].flatMap(({ place }) => place.at));
}
