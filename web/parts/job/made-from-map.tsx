import { type Job, recheckBecauseOf, upstreamOf } from '../../../shared/job/job.ts';
import { capital, sized } from '../../../shared/report/words.ts';
import { useSize } from '../../drawing/use-size.ts';
import { usePage } from '../../state/page.ts';
import { mainFigure, verdictText } from '../../words/job.ts';
import { say } from '../../words/say.ts';
import { type Desk, historyOf } from './desk.ts';

const [gapPx, rowPx] = [46, 76];
const widestPx = 270;

/** The surfaces as a small map: an arrow leads from each to what was made from it; who stands to be checked is marked. */
export function MadeFromMap({ desk }: { desk: Desk }) {
  const page = usePage();
  const { ref, widthPx } = useSize<HTMLElement>();
  const { job } = desk.open;
  const places = placesOf(job);
  const columns = 1 + Math.max(0, ...places.map(({ column }) => column));
  const rows = 1 + Math.max(0, ...places.map(({ row }) => row));
  const boxPx = Math.min(widestPx, (widthPx - (columns - 1) * gapPx) / columns);
  const left = (column: number) => column * (boxPx + gapPx);
  const top = (row: number) => row * rowPx;
  const byName = new Map(places.map((place) => [place.name, place]));
  if (places.length === 0) return null;
  return (
    <nav
      class="made-from"
      ref={ref}
      aria-label={say('Surfaces')}
      style={{ height: `${rows * rowPx - 12}px` }}
    >
      {widthPx > 0 && (
        <svg width={widthPx} height={rows * rowPx} aria-hidden="true">
          {places.flatMap(({ name, column, row, madeFrom }) =>
            madeFrom.flatMap((from) => {
              const start = byName.get(from);
              if (!start) return [];
              const [x1, y1] = [left(start.column) + boxPx, top(start.row) + 32];
              const [x2, y2] = [left(column) - 2, top(row) + 32];
              const bend = x2 - gapPx / 2;
              return [
                <path key={`${from} ${name}`} class="thin" d={`M${x1} ${y1}H${bend}V${y2}H${x2}`} />,
                <path key={`${from} ${name} head`} class="arrow" d={`M${x2} ${y2}l-10 -4v8z`} />,
              ];
            }),
          )}
        </svg>
      )}
      {widthPx > 0 &&
        places.map(({ name, column, row }) => {
          const recheck = recheckBecauseOf(job, name);
          return (
            <button
              key={name}
              type="button"
              class="control surface"
              aria-pressed={name === desk.surface?.name}
              data-testid="surface"
              data-recheck={recheck.length > 0}
              style={{ left: `${left(column)}px`, top: `${top(row)}px`, width: `${boxPx}px` }}
              onClick={(event) => {
                if (event.detail > 0) event.currentTarget.blur();
                const { job: looking } = page.store.get();
                if (looking) page.change({ job: { ...looking, surface: name } });
              }}
            >
              <span class="word">{capital(name)}</span>
              <span class="hint">{stateText(desk, name, recheck)}</span>
            </button>
          );
        })}
    </nav>
  );
}

function stateText(desk: Desk, name: string, recheck: readonly string[]): string {
  const surface = desk.open.job.surfaces.get(name) ?? null;
  if (recheck.length > 0) return say('▲ re-check: {others} was scraped', { others: recheck.join(', ') });
  if (surface && surface.passesSince.length > 0) return say('▲ scraped since: measure it');
  const history = historyOf(desk.open, surface);
  const figure = history && mainFigure(history);
  if (!figure) return say('not measured yet');
  return say('{value} {unit}, {verdict}', {
    value: sized(figure),
    unit: figure.unit,
    verdict: verdictText(figure),
  });
}

interface Place {
  readonly name: string;
  readonly madeFrom: readonly string[];
  readonly column: number;
  readonly row: number;
}

/** Each surface one column after the furthest that it is made from, rows from the top. */
function placesOf(job: Job): Place[] {
  const column = (name: string): number => {
    const from = job.surfaces.get(name)?.madeFrom ?? [];
    const sound = from.filter((other) => !upstreamOf(job, other).includes(name));
    return sound.length === 0 ? 0 : 1 + Math.max(...sound.map(column));
  };
  const used = new Map<number, number>();
  return [...job.surfaces.values()].map(({ name, madeFrom }) => {
    const at = column(name);
    const row = used.get(at) ?? 0;
    used.set(at, row + 1);
    return { name, madeFrom, column: at, row };
  });
}
