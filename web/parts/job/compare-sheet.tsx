import { useState } from 'preact/hooks';
import type { Measured, StationDifference } from '../../../shared/job/before-after.ts';
import type { JobSurvey } from '../../../shared/job/survey.ts';
import { unlike } from '../../../shared/job/unlike.ts';
import { differencesOf } from '../../../shared/report/history.ts';
import { capital, overWhat, sized } from '../../../shared/report/words.ts';
import { amount } from '../../../shared/words.ts';
import { across } from '../../drawing/across.ts';
import { heightsAxis } from '../../drawing/heights-axis.ts';
import { LineChart, partPx, timesTooHigh } from '../../drawing/job/line-chart.tsx';
import { placedOn, reachOf } from '../../drawing/job/placed.ts';
import { StationPlan } from '../../drawing/job/station-plan.tsx';
import { textWidth } from '../../drawing/text-width.ts';
import { thinLabels } from '../../drawing/thin-labels.ts';
import { useSize } from '../../drawing/use-size.ts';
import { say } from '../../words/say.ts';
import type { Desk } from './desk.ts';

/** As found and a later round on one scale that does not change, with the difference and its own doubt. */
export function CompareSheet({ desk: { history } }: { desk: Desk }) {
  const last = (history?.surveys.length ?? 1) - 1;
  const [chosen, setChosen] = useState(last);
  if (!history || last === 0) return <p>{say('There is only one round yet: nothing to compare it with.')}</p>;
  const k = Math.min(Math.max(1, chosen), last);
  const [before, after] = [history.first, history.surveys[k]!];
  const found = differencesOf(before, after);
  // Every round is on the same scale: what shrinks, shrinks.
  const all = history.surveys
    .slice(1)
    .flatMap((survey) => Object.values(differencesOf(before, survey)).flat());
  const rounds = history.surveys.map(({ record }) => record.round);
  return (
    <section class="two-columns wide-first" aria-label={say('Before and after')}>
      <div class="column-of">
        {Object.entries(found).map(([line, stations]) =>
          stations.length === 0 ? (
            <p key={line} class="wrong">
              {say('{line}: the two surveys have no stations in common, so they are not compared.', { line })}
            </p>
          ) : line === 'plane' ? (
            <Plates key={line} before={before} after={after} stations={stations} all={all} />
          ) : (
            <Lines key={line} line={line} before={before} after={after} stations={stations} all={all} />
          ),
        )}
        <div class="slider">
          <span>
            {'plane' in found
              ? say('{round} at the left; at the right', { round: capital(before.record.round) })
              : say('{round} (dashes) and', { round: capital(before.record.round) })}
          </span>
          {last > 1 && (
            <input
              type="range"
              min={1}
              max={last}
              step={1}
              value={k}
              data-testid="round-slider"
              aria-label={say('Round to compare with')}
              aria-valuetext={rounds[k]}
              onInput={(event) => setChosen(Number(event.currentTarget.value))}
            />
          )}
          <b data-testid="compared-with">{rounds[k]}</b>
        </div>
      </div>
      <NotAlike before={before} after={after} />
    </section>
  );
}

interface ComparedProps {
  readonly before: JobSurvey;
  readonly after: JobSurvey;
  readonly stations: readonly StationDifference[];
  /** Of every round: what the scale has to hold. */
  readonly all: readonly StationDifference[];
}

function reach(all: readonly StationDifference[]): number[] {
  return all.flatMap(({ before, after }) =>
    [before, after].flatMap(({ value, u }) => [value - 2 * u, value + 2 * u]),
  );
}

const differencePx = 34;

function Lines({ line, before, after, stations, all }: ComparedProps & { readonly line: string }) {
  const { ref, widthPx, heightPx } = useSize<HTMLDivElement>();
  const compared = new Set(stations.map(({ name }) => name));
  const placed = placedOn(after, line).filter(({ name }) => compared.has(name));
  const reachMm = reachOf(placed);
  const shared = across(widthPx, reachMm, reachMm, 86);
  const chartPx = Math.max(150, heightPx - differencePx);
  const worstU = Math.max(0.1, ...stations.map(({ difference }) => difference.u));
  const axis = heightsAxis(reach(all), worstU, Math.max(3, Math.floor((chartPx - partPx) / 32)), 'below');
  return (
    <>
      <p class="caption-line">
        {say(
          'Height over {reference}, µm; shaded: sure to. One scale for every round, drawn {times} × too high.',
          {
            reference: overWhat(after),
            times: widthPx > 0 && heightPx > 0 ? timesTooHigh(shared, axis, chartPx) : '…',
          },
        )}
      </p>
      <div class="drawing chart-room" ref={ref}>
        {widthPx > 0 && heightPx > 0 && (
          <>
            <LineChart
              across={shared}
              stations={placed}
              axis={axis}
              heightPx={chartPx}
              label={say('{line}, {before} and {after}', {
                line,
                before: before.record.round,
                after: after.record.round,
              })}
              curves={[
                {
                  kind: 'before',
                  name: before.record.round,
                  heights: stations.map((each) => each.before),
                },
                { kind: 'after', name: after.record.round, heights: stations.map((each) => each.after) },
              ]}
            />
            <DifferenceRow stations={stations} placed={placed} pxOf={shared.px} widthPx={widthPx} />
          </>
        )}
      </div>
      <DifferenceTable stations={stations} />
    </>
  );
}

/** Under the stations: how much each came up or down, or that it is the same. */
function DifferenceRow({
  stations,
  placed,
  pxOf,
  widthPx,
}: {
  stations: readonly StationDifference[];
  placed: readonly { xMm: number }[];
  pxOf(xMm: number): number;
  widthPx: number;
}) {
  const texts = stations.map(({ difference }) => differenceText(difference));
  const shown = thinLabels(
    texts.map((text, k) => ({
      px: pxOf(placed[k]!.xMm),
      widthPx: 0.85 * textWidth(text, 12.5) - 4,
      must: false,
    })),
  );
  return (
    <svg width={widthPx} height={differencePx} viewBox={`0 0 ${widthPx} ${differencePx}`} aria-hidden="true">
      <text x={0} y={15}>
        {say('difference')}
      </text>
      {texts.map(
        (text, k) =>
          shown.has(k) && (
            <text
              key={stations[k]!.name}
              class={stations[k]!.difference.same ? '' : 'done'}
              x={pxOf(placed[k]!.xMm)}
              y={15}
              text-anchor="middle"
            >
              {text}
            </text>
          ),
      )}
    </svg>
  );
}

function differenceText({ value, u, same }: StationDifference['difference']): string {
  if (u === 0) return '·';
  if (same) return say('same');
  const size = amount(value, u);
  return value < 0 ? say('{size} down', { size }) : say('{size} up', { size });
}

/** For who cannot see the drawing, and for tests. */
function DifferenceTable({ stations }: { stations: readonly StationDifference[] }) {
  return (
    <div class="unseen">
      <table data-testid="differences">
        <tbody>
          {stations.map(({ name, before, after, difference }) => (
            <tr key={name} data-station={name} data-same={difference.same}>
              <th scope="row">{name}</th>
              <td>{sized(before)}</td>
              <td>{sized(after)}</td>
              <td>{differenceText(difference)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Plates({ before, after, stations, all }: ComparedProps) {
  const { ref, widthPx, heightPx } = useSize<HTMLDivElement>();
  const values = all.flatMap((each) => [each.before.value, each.after.value]);
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const half = (widthPx - 20) / 2;
  return (
    <>
      <p class="caption-line">
        {say('µm over {reference}. Bare is low, inked is high; one scale for every round.', {
          reference: overWhat(after),
        })}
      </p>
      <div class="drawing chart-room side-by-side" ref={ref}>
        {widthPx > 0 &&
          (['before', 'after'] as const).map((which) => {
            const by = new Map(stations.map((each) => [each.name, each[which]]));
            return (
              <StationPlan
                key={which}
                survey={after}
                widthPx={half}
                heightPx={Math.max(180, heightPx)}
                label={capital((which === 'before' ? before : after).record.round)}
                mark={(name) => {
                  const height = by.get(name);
                  return height
                    ? { ink: (height.value - low) / (high - low || 1), text: highOrLow(height) }
                    : null;
                }}
              />
            );
          })}
      </div>
      <DifferenceTable stations={stations} />
    </>
  );
}

function highOrLow({ value, u }: Measured): string {
  const size = amount(value, u);
  return Number(size) === 0 ? size : value < 0 ? say('{size} low', { size }) : say('{size} high', { size });
}

function NotAlike({ before, after }: { before: JobSurvey; after: JobSurvey }) {
  const rows = unlike(before, after);
  return (
    <div class="column-of" data-testid="unlike">
      <h2>{say('What was not alike')}</h2>
      {rows.length === 0 ? (
        <p>{say('Nothing that is on record: the two can be compared as they are.')}</p>
      ) : (
        <dl class="unlike">
          {rows.map(({ what, before: was, after: is }) => (
            <div key={what}>
              <dt>{capital(what)}</dt>
              <dd>{say('{before}, then {after}', { before: was, after: is })}</dd>
            </div>
          ))}
        </dl>
      )}
      <p class="caption-line">
        {say('A difference smaller than twice its own uncertainty is called the same.')}
      </p>
    </div>
  );
}
