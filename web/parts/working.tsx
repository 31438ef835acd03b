import { handColumns } from '../../shared/figures/hand-columns.ts';
import type { Session } from '../../shared/session/fold.ts';
import { takenRuns } from '../../shared/session/taken-runs.ts';
import { type Placement, placementKey, placementsOf, type TiltRun } from '../../shared/survey/plan.ts';
import { toInternal } from '../../shared/units.ts';
import { decimalsFor, referenceWord } from '../../shared/words.ts';
import { behindHeight, type Lit, strengths, weightsOf } from '../state/lit.ts';
import { usePage, usePick } from '../state/page.ts';
import type { Reference } from '../state/page-state.ts';
import { type SurveyResult, surveyResult } from '../state/survey-result.ts';
import { kindWords } from '../words/kinds.ts';
import { spanText } from '../words/length.ts';
import { asWritten } from '../words/quantity.ts';
import { say } from '../words/say.ts';
import { runTitle } from '../words/sentence.ts';
import { heightText, signed, signedSize } from '../words/signed.ts';
import { SweepTable, sweepWords } from './working-sweeps.tsx';
import { Why } from './working-why.tsx';

/** The arithmetic as it would be done on paper, run by run, and beside it what all readings together say. */
export function Working({ session, reference }: { session: Session; reference: Reference }) {
  const survey = surveyResult(session, reference);
  const lit = usePick((state) => state.lit);
  const behind = lit?.is === 'height' && survey ? behindHeight(session, lit, reference) : [];
  const lights = strengths(behind);
  const weights = lit?.is === 'height' ? weightsOf(behind) : null;
  const read = new Set([...session.counted.values()].map(({ place }) => place.run));
  const runs = session.plan.runs.filter(({ id }) => read.has(id));
  const walks = runs.filter((run): run is TiltRun => run.reads === 'tilt');
  const swept = new Set(runs.filter(({ reads }) => reads === 'height').map(({ line }) => line));
  return (
    <section class="working" data-testid="working" aria-label="The working">
      <p class="soft">
        {kindWords[session.setup.kind].reads === 'tilt'
          ? say(walkWords, { reference: referenceWord(reference) })
          : sweepWords(session)}
      </p>
      {survey && walks.length > 0 && <Why session={session} survey={survey} lit={lit} behind={behind} />}
      <div class="walks">
        {walks.map((run) =>
          session.setup.kind === 'bed' && run.id === 'across' ? (
            <CrossTable key={run.id} session={session} run={run} lights={lights} />
          ) : (
            <WalkTable
              key={run.id}
              session={session}
              run={run}
              survey={survey}
              reference={reference}
              lit={lit}
              lights={lights}
              weights={weights}
            />
          ),
        )}
        {[...swept].map((line) => (
          <SweepTable key={line} session={session} line={line} survey={survey} reference={reference} />
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
  'Reading × foot spacing is the rise of one step. The rises are summed; the line through both ends is taken off the sum, and with it the zero of the level. Plus stands proud. The last column puts all walks together and stands over {reference}.';

interface WalkTableProps {
  readonly session: Session;
  readonly run: TiltRun;
  readonly survey: SurveyResult | null;
  /** What the heights of the last column stand over. */
  readonly reference: Reference;
  readonly lit: Lit | null;
  /** How strongly each reading is lit, by `placementKey`. */
  readonly lights: ReadonlyMap<string, number>;
  /** What each reading counts in the height that is explained, µm for 1 µm/m; null when none is. */
  readonly weights: ReadonlyMap<string, number> | null;
}

/** The ground of a row that is lit: the stronger, the more it counts. */
function litStyle(strength: number | undefined) {
  if (!strength || strength < 0.01) return {};
  const percent = Math.round(4 + 20 * strength);
  return { style: { background: `color-mix(in srgb, var(--print) ${percent}%, transparent)` } };
}

function WalkTable({ session, run, survey, reference, lit, lights, weights }: WalkTableProps) {
  const page = usePage();
  const steps = stepsOf(session, run);
  const placeOf = ({ from, to }: { from: string; to: string }): Placement => ({
    run: run.id,
    at: [from, to],
  });
  const { rows, complete } = handColumns(steps, run.facing);
  const line = survey?.lines.find(({ name }) => name === run.line);
  const together = new Map(line?.stations.map((station) => [station.name, station]));
  const largestU = Math.max(0.05, ...(line?.stations.map(({ uUm }) => uUm) ?? []));
  const writing = asWritten();
  const head = writing.head();
  const decimals = Math.max(1, decimalsFor(largestU / writing.one()));
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
          <th scope="col">{say('Reading {unit}', { unit: writing.head('µm/m') })}</th>
          <th scope="col">
            {say('× {base} = rise {unit}', {
              base: spanText(steps[0]?.baseMm ?? 0, writing.lengthUnit),
              unit: head,
            })}
          </th>
          <th scope="col">{say('Sum {unit}', { unit: head })}</th>
          <th scope="col">{say('End line {unit}', { unit: head })}</th>
          <th scope="col">{say('Height over end line {unit}', { unit: head })}</th>
          <th scope="col" data-testid="over">
            {say('All walks, over {reference} {unit}', { reference: referenceWord(reference), unit: head })}
          </th>
          {weights && <th scope="col">{say('Counts µm per µm/m')}</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => {
          const all = together.get(row.to);
          return (
            <tr key={row.to} {...litStyle(lights.get(placementKey(placeOf(row))))}>
              <th scope="row">
                <button
                  type="button"
                  class="tap"
                  aria-pressed={
                    lit?.is === 'reading' && placementKey(lit.place) === placementKey(placeOf(row))
                  }
                  onClick={() => page.change({ lit: { is: 'reading', place: placeOf(row) } })}
                >
                  {`${row.from}–${row.to}`}
                </button>
              </th>
              <td>{signedSize(row.readingUmPerM, 1, 'µm/m')}</td>
              <td>{signedSize(row.riseUm, 2)}</td>
              <td>{signedSize(row.sumUm, 2)}</td>
              <td>{signedSize(row.endLineUm, 2)}</td>
              <td>{signedSize(row.heightUm, decimals)}</td>
              <td>
                {all && (
                  <button
                    type="button"
                    class="tap"
                    data-testid={`height-${row.to}`}
                    aria-pressed={lit?.is === 'height' && lit.station === row.to}
                    onClick={() => page.change({ lit: { is: 'height', line: run.line, station: row.to } })}
                  >
                    {heightText(all, decimals)}
                  </button>
                )}
              </td>
              {weights && <td>{signed(weights.get(placementKey(placeOf(row))) ?? 0, 4)}</td>}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** Readings across a bed are not summed: each tells how far the rear way stands over the front one. */
interface CrossTableProps {
  readonly session: Session;
  readonly run: TiltRun;
  readonly lights: ReadonlyMap<string, number>;
}

function CrossTable({ session, run, lights }: CrossTableProps) {
  const steps = stepsOf(session, run).filter(({ readingUmPerM }) => readingUmPerM !== null);
  const mean = steps.reduce((sum, step) => sum + run.facing * (step.readingUmPerM ?? 0), 0) / steps.length;
  const writing = asWritten();
  return (
    <table>
      <caption>{runTitle(session, run)}</caption>
      <thead>
        <tr>
          <th scope="col">Across</th>
          <th scope="col">{`Reading ${writing.head('µm/m')}`}</th>
          <th scope="col">{`Less the mean ${writing.head('µm/m')}`}</th>
          <th scope="col">{`× ${spanText(steps[0]?.baseMm ?? 0, writing.lengthUnit)} = rear over front ${writing.head()}`}</th>
        </tr>
      </thead>
      <tbody>
        {steps.map(({ from, to, readingUmPerM, baseMm }) => {
          const reading = run.facing * (readingUmPerM ?? 0);
          return (
            <tr key={from} {...litStyle(lights.get(placementKey({ run: run.id, at: [from, to] })))}>
              <th scope="row">{`${from}–${to}`}</th>
              <td>{signedSize(reading, 1, 'µm/m')}</td>
              <td>{signedSize(reading - mean, 1, 'µm/m')}</td>
              <td>{signedSize(((reading - mean) * baseMm) / 1000, 2)}</td>
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
