import { useState } from 'preact/hooks';
import { readStations, stationRuns } from '../../../shared/job/station-runs.ts';
import { linesUnder } from '../../../shared/job/survey.ts';
import { usePage } from '../../state/page.ts';
import { nothing } from '../../state/page-state.ts';
import { say } from '../../words/say.ts';
import type { Desk } from './desk.ts';
import { JobForm } from './job-form.tsx';

interface Row {
  readonly text: string;
  readonly taken: boolean;
}

/** Which passes were really taken: those of the plan to begin with, each to be changed or left out. */
export function PassesQuestion({ desk }: { desk: Desk }) {
  const page = usePage();
  const { history, surface } = desk;
  const lines = history ? linesUnder(history.newest) : [];
  const plans = Object.values(history?.newest.result.metal ?? {});
  const perRound = surface?.target?.passesPerRound ?? 4;
  const [rows, setRows] = useState<readonly Row[]>(() => {
    const planned = plans.flatMap(({ plan }) =>
      plan.slice(0, perRound).map(({ stations }) => ({ text: stationRuns(stations, lines), taken: true })),
    );
    return planned.length > 0 ? planned : [{ text: '', taken: true }];
  });
  const read = rows.map(({ text }) => readStations(text, lines));
  const taken = read.filter(({ stations }, k) => rows[k]!.taken && stations.length > 0);
  const wrong = rows.some(({ taken: on }, k) => on && read[k]!.unknown !== null);
  const change = (k: number, part: Partial<Row>) =>
    setRows(rows.map((row, j) => (j === k ? { ...row, ...part } : row)));
  const answer = async () => {
    if (!surface || wrong || taken.length === 0) return;
    const passes = taken.map(({ stations }) => stations);
    if (!(await desk.write({ change: 'passes', surface: surface.name, passes }))) page.point(nothing);
  };
  return (
    <JobForm
      title={say('Which passes were taken since {round}?', {
        round: history?.newest.record.round ?? say('the last survey'),
      })}
      answer={
        taken.length === 1
          ? say('Write 1 pass down')
          : say('Write {count} passes down', { count: taken.length })
      }
      disabled={wrong || taken.length === 0}
      onAnswer={answer}
    >
      <ol class="taken-passes">
        {rows.map(({ text, taken: on }, k) => (
          // Rows never move: each keeps its place in the list.
          <li key={k}>
            <button
              type="button"
              class="control"
              aria-pressed={on}
              data-testid="taken"
              onClick={() => change(k, { taken: !on })}
            >
              <span class="word">{say('Pass {pass}', { pass: k + 1 })}</span>
              <span class="hint">{on ? say('was taken') : say('not taken')}</span>
            </button>
            <div class="field">
              <input
                aria-label={say('Stations of pass {pass}', { pass: k + 1 })}
                aria-invalid={on && read[k]!.unknown !== null}
                autocomplete="off"
                disabled={!on}
                value={text}
                onInput={(event) => change(k, { text: event.currentTarget.value })}
              />
              {on && read[k]!.unknown !== null && (
                <p class="wrong">{say('There is no station {name}.', { name: read[k]!.unknown ?? '' })}</p>
              )}
            </div>
          </li>
        ))}
      </ol>
      <button type="button" class="small" onClick={() => setRows([...rows, { text: '', taken: true }])}>
        {say('One more pass')}
      </button>
    </JobForm>
  );
}
