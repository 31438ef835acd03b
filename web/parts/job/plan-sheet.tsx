import { useState } from 'preact/hooks';
import { stationRuns } from '../../../shared/job/station-runs.ts';
import { linesUnder } from '../../../shared/job/survey.ts';
import { differencesOf, type History } from '../../../shared/report/history.ts';
import { wantsPlan } from '../../../shared/report/scraping-plan.ts';
import { passesSince } from '../../../shared/report/words.ts';
import type { Result } from '../../../shared/sheet/result.ts';
import { across } from '../../drawing/across.ts';
import { PassStrip } from '../../drawing/bed/pass-strip.tsx';
import { heightsAxis } from '../../drawing/heights-axis.ts';
import { LineChart, partPx } from '../../drawing/job/line-chart.tsx';
import { placedOn, reachOf } from '../../drawing/job/placed.ts';
import { StationPlan } from '../../drawing/job/station-plan.tsx';
import { useSize } from '../../drawing/use-size.ts';
import { say } from '../../words/say.ts';
import type { Desk } from './desk.ts';
import { LearntBite } from './learnt-bite.tsx';

type Metal = Result['metal'][string];

/** What to scrape next, pass by pass: the sheet that is laid on the bench. */
export function PlanSheet({ desk }: { desk: Desk }) {
  const { history } = desk;
  if (!history) return <p>{say('The plan follows from a survey: measure the surface first.')}</p>;
  const metals = Object.entries(history.newest.result.metal);
  if (metals.length === 0) return <p>{say('This kind of survey says nothing of what to scrape.')}</p>;
  return (
    <section class="two-columns wide-first plan" aria-label={say('What to scrape')} data-testid="plan">
      <div class="column-of">
        {metals.map(([name, metal]) => (
          <Strip key={name} history={history} name={name} metal={metal} />
        ))}
        <p class="caption-line">{targetText(history)}</p>
      </div>
      <div class="column-of">
        {metals.map(([name, metal]) => (
          <Passes key={name} history={history} name={name} metal={metal} several={metals.length > 1} />
        ))}
        <LearntBite desk={desk} />
        <p class="caption-line">
          {say(
            'A suggestion from numbers: what is off does not go back on. Look at the blue as well, and stop early.',
          )}
        </p>
      </div>
    </section>
  );
}

function targetText({ newest, surface }: History): string {
  const {
    shape = 'flat',
    crownUm = 0,
    tilt = 'free',
    biteUm = 5,
    stopPasses = 0,
  } = newest.sheet.target ?? {};
  const values = {
    crown: crownUm,
    bite: biteUm,
    stop: stopPasses,
    round: surface.target?.passesPerRound ?? 4,
  };
  const wished =
    shape === 'flat'
      ? say('Target: flat.')
      : shape === 'crown'
        ? say('Target: crowned by {crown} µm.', values)
        : say('Target: hollow by {crown} µm.', values);
  const lies =
    tilt === 'fixed'
      ? say('It stays parallel to its reference.')
      : say('It may tilt as takes off the least.');
  const how = say('{bite} µm a pass; passes left to the blue: {stop}; measured again after {round}.', values);
  return `${wished} ${lies} ${how}`;
}

interface OfLine {
  readonly history: History;
  readonly name: string;
  readonly metal: Metal;
}

/** The profile, and straight under it on the same axis the passes at every station. */
function Strip({ history, name, metal }: OfLine) {
  const { newest } = history;
  const { ref, widthPx, heightPx } = useSize<HTMLDivElement>();
  const placed = placedOn(newest, name).filter((station) => metal.stations[station.name]);
  const most = Math.max(1, ...Object.values(metal.stations).map(({ passes }) => passes));
  if (placed.length === 0) {
    return (
      <div class="drawing chart-room" ref={ref}>
        {widthPx > 0 && (
          <StationPlan
            survey={newest}
            widthPx={widthPx}
            heightPx={Math.max(200, heightPx)}
            label={say('Passes at every station')}
            mark={(station) => {
              const found = metal.stations[station];
              return found
                ? { ink: found.worthAStroke ? found.passes / most : 0, text: String(found.passes) }
                : null;
            }}
          />
        )}
      </div>
    );
  }
  const compared = new Map(
    (differencesOf(newest, newest)[name] ?? []).map((each) => [each.name, each.after]),
  );
  const heights = placed.map((station) => compared.get(station.name) ?? { value: 0, u: 0 });
  const reachMm = reachOf(placed);
  const shared = across(widthPx, reachMm, reachMm, 86);
  const chartPx = Math.max(130, heightPx - 62);
  const axis = heightsAxis(
    heights.flatMap(({ value, u }) => [value - 2 * u, value + 2 * u]),
    Math.max(0.1, ...heights.map(({ u }) => u)),
    Math.max(3, Math.floor((chartPx - partPx) / 34)),
    'below',
  );
  return (
    <div class="drawing chart-room" ref={ref}>
      {widthPx > 0 && heightPx > 0 && (
        <>
          <LineChart
            across={shared}
            stations={placed}
            axis={axis}
            heightPx={chartPx}
            label={say('Heights of {line} before scraping', { line: name })}
            curves={[{ kind: 'after', name: newest.record.round, heights }]}
          />
          <PassStrip across={shared} stations={placed} metal={metal} />
        </>
      )}
    </div>
  );
}

/** The passes to take before it is measured again, in letters that are read at arm's length. */
function Passes({ history, name, metal, several }: OfLine & { readonly several: boolean }) {
  const { surface, newest } = history;
  const [whole, setWhole] = useState(false);
  const done = !wantsPlan(history);
  const lines = linesUnder(newest, name);
  const perRound = surface.target?.passesPerRound ?? 4;
  const next = done ? [] : metal.plan.slice(0, perRound);
  const now = whole ? metal.plan : next;
  const later = metal.plan.length - next.length;
  const doubtful = Object.entries(metal.stations).filter(
    ([, { removeUm, worthAStroke }]) => removeUm > 0 && !worthAStroke,
  );
  return (
    <div class="passes-room">
      {several && <h2>{name}</h2>}
      {surface.passesSince.length > 0 && (
        <p class="wrong">
          {say('▲ {passes} scraped since: measure again before you go on.', { passes: passesSince(surface) })}
        </p>
      )}
      {next.length === 0 && (
        <p class="large-words">
          {done
            ? say('It is within its limits: nothing has to come off. What is left is for the blue.')
            : say('Nothing to scrape by the numbers: the rest is for the blue.')}
        </p>
      )}
      {now.length === 0 ? null : (
        <ol class="passes" data-testid="passes">
          {now.map(({ pass, stations }) => (
            <li key={pass}>
              <span class="no">{say('Pass {pass}', { pass })}</span>
              <span class="where">{stationRuns(stations, lines)}</span>
              <span class="tick-box" />
            </li>
          ))}
        </ol>
      )}
      {now.length > 0 && <p class="large-words">{say('Then measure again.')}</p>}
      {later > 0 && (
        <button
          type="button"
          class="small screen-only"
          aria-expanded={whole}
          onClick={() => setWhole(!whole)}
        >
          {whole ? say('Only the next round') : say('{count} more foreseen: show', { count: later })}
        </button>
      )}
      {doubtful.length > 0 && (
        <p>
          {say('Not worth a stroke (hatched, less than its own doubt): {stations}.', {
            stations: stationRuns(
              doubtful.map(([station]) => station),
              lines,
            ),
          })}
        </p>
      )}
    </div>
  );
}
