import { handColumns } from '../../shared/figures/hand-columns.ts';
import type { Session } from '../../shared/session/fold.ts';
import { takenRuns } from '../../shared/session/taken-runs.ts';
import { placementKey, placementsOf, type TiltRun } from '../../shared/survey/plan.ts';
import { toInternal } from '../../shared/units.ts';
import { decimalsFor } from '../../shared/words.ts';
import { type SurveyResult, surveyResult } from '../state/survey-result.ts';
import { kindWords } from '../words/kinds.ts';
import { lengthText } from '../words/length.ts';
import { runTitle } from '../words/sentence.ts';
import { signed } from '../words/signed.ts';
import { SweepTable, sweepWords } from './working-sweeps.tsx';

/** The arithmetic as it would be done on paper, run by run, and beside it what all readings together say. */
export function Working({ session }: { session: Session }) {
  const survey = surveyResult(session, 'ends');
  const read = new Set([...session.counted.values()].map(({ place }) => place.run));
  const runs = session.plan.runs.filter(({ id }) => read.has(id));
  const walks = runs.filter((run): run is TiltRun => run.reads === 'tilt');
  const swept = new Set(runs.filter(({ reads }) => reads === 'height').map(({ line }) => line));
  return (
    <section class="working" data-testid="working" aria-label="The working">
      <p class="soft">{kindWords[session.setup.kind].reads === 'tilt' ? walkWords : sweepWords(session)}</p>
      <div class="walks">
        {walks.map((run) =>
          session.setup.kind === 'bed' && run.id === 'across' ? (
            <CrossTable key={run.id} session={session} run={run} />
          ) : (
            <WalkTable key={run.id} session={session} run={run} survey={survey} />
          ),
        )}
        {[...swept].map((line) => (
          <SweepTable key={line} session={session} line={line} survey={survey} />
        ))}
      </div>
      {survey && (
        <ul class="soft">
          {survey.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

const walkWords =
  'Reading × foot spacing is the rise of one step. The rises are summed; the line through both ends is taken off the sum, and with it the zero of the level. Plus stands proud. The last column puts all walks together.';

interface WalkTableProps {
  readonly session: Session;
  readonly run: TiltRun;
  readonly survey: SurveyResult | null;
}

function WalkTable({ session, run, survey }: WalkTableProps) {
  const steps = stepsOf(session, run);
  const { rows, complete } = handColumns(steps, run.facing);
  const line = survey?.lines.find(({ name }) => name === run.line);
  const together = new Map(line?.stations.map((station) => [station.name, station]));
  const largestU = Math.max(0.05, ...(line?.stations.map(({ uUm }) => uUm) ?? []));
  const decimals = Math.max(1, decimalsFor(largestU));
  return (
    <table>
      <caption>
        {runTitle(session, run)}
        {run.facing === -1 && ', plus end to the start: readings count the other way'}
        {complete
          ? ''
          : `, as far as ${rows.at(-1)?.to ?? steps[0]?.from}: what lies beyond hangs on a step not read`}
      </caption>
      <thead>
        <tr>
          <th scope="col">Step</th>
          <th scope="col">Reading µm/m</th>
          <th scope="col">× {lengthText(steps[0]?.baseMm ?? 0, 'mm')} mm = rise µm</th>
          <th scope="col">Sum µm</th>
          <th scope="col">End line µm</th>
          <th scope="col">Height µm</th>
          <th scope="col">All walks µm</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const all = together.get(row.to);
          return (
            <tr key={row.to}>
              <th scope="row">{`${row.from}–${row.to}`}</th>
              <td>{signed(row.readingUmPerM, 1)}</td>
              <td>{signed(row.riseUm, 2)}</td>
              <td>{signed(row.sumUm, 2)}</td>
              <td>{signed(row.endLineUm, 2)}</td>
              <td>{signed(row.heightUm, decimals)}</td>
              <td>{all ? `${signed(all.heightUm, decimals)} ± ${(2 * all.uUm).toFixed(decimals)}` : ''}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Readings across a bed are not summed: each tells how far the rear way stands over the front one. */
function CrossTable({ session, run }: { session: Session; run: TiltRun }) {
  const steps = stepsOf(session, run).filter(({ readingUmPerM }) => readingUmPerM !== null);
  const mean = steps.reduce((sum, step) => sum + run.facing * (step.readingUmPerM ?? 0), 0) / steps.length;
  return (
    <table>
      <caption>{runTitle(session, run)}</caption>
      <thead>
        <tr>
          <th scope="col">Across</th>
          <th scope="col">Reading µm/m</th>
          <th scope="col">Less the mean µm/m</th>
          <th scope="col">× {lengthText(steps[0]?.baseMm ?? 0, 'mm')} mm = rear over front µm</th>
        </tr>
      </thead>
      <tbody>
        {steps.map(({ from, to, readingUmPerM, baseMm }) => {
          const reading = run.facing * (readingUmPerM ?? 0);
          return (
            <tr key={from}>
              <th scope="row">{`${from}–${to}`}</th>
              <td>{signed(reading, 1)}</td>
              <td>{signed(reading - mean, 1)}</td>
              <td>{signed(((reading - mean) * baseMm) / 1000, 2)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** The steps of a walk in the order of its line, whichever way it was walked. */
function stepsOf(session: Session, run: TiltRun) {
  const { unit, graduation } = session.setup.instrument;
  const where = new Map(session.plan.stations.map((station) => [station.name, station]));
  const names = session.plan.lines[run.line] ?? [];
  const taken = takenRuns(session).find((one) => one.run.id === run.id)?.takes ?? [];
  const along = placementsOf(run).sort((a, b) => names.indexOf(a.at[0]) - names.indexOf(b.at[0]));
  return along.map((place) => {
    const [from, to = from] = place.at;
    const [a, b] = [where.get(from), where.get(to)];
    const take = taken.find((one) => placementKey(one.place) === placementKey(place));
    return {
      from,
      to,
      readingUmPerM: take ? toInternal('tilt', take.value * graduation, unit) : null,
      baseMm: a && b ? Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm) : 0,
    };
  });
}
