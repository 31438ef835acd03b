import { blueOnSurvey, hingeShape, type Print } from '../../../shared/job/blue.ts';
import { stationRuns } from '../../../shared/job/station-runs.ts';
import { type JobSurvey, linesUnder } from '../../../shared/job/survey.ts';
import { type History, printsOf } from '../../../shared/report/history.ts';
import { capital } from '../../../shared/report/words.ts';
import type { Result } from '../../../shared/sheet/result.ts';
import { across } from '../../drawing/across.ts';
import { InkRows } from '../../drawing/job/ink-rows.tsx';
import { placedOn, reachOf } from '../../drawing/job/placed.ts';
import { StationPlan } from '../../drawing/job/station-plan.tsx';
import { useSize } from '../../drawing/use-size.ts';
import { filePath } from '../../state/job-api.ts';
import { say } from '../../words/say.ts';
import type { Desk } from './desk.ts';

/** Where a flat reference should take colour by the numbers, beside where it did. Neither overrules the other. */
export function BlueSheet({ desk }: { desk: Desk }) {
  const { history } = desk;
  if (!history) return <p>{say('A print goes with a survey: measure the surface first.')}</p>;
  const newest = printsOf(history).at(-1) ?? null;
  const ofNow = newest?.survey === history.newest;
  const print = ofNow ? newest.print : null;
  return (
    <section class="two-columns wide-first" aria-label={say('Blue and numbers')} data-testid="blue">
      <div class="column-of">
        <p class="caption-line">
          {say(
            'The print to expect from the survey {round}, with an ink film of 2.5 µm, beside what the blue showed.',
            { round: history.newest.record.round },
          )}
        </p>
        {Object.entries(history.newest.result.metal).map(([line, metal]) => (
          <Inked key={line} survey={history.newest} line={line} contact={metal.contact} print={print} />
        ))}
        {!print && <p class="large-words">{say('No print was recorded after this survey.')}</p>}
        {print && <Together survey={history.newest} print={print} />}
      </div>
      <div class="column-of">
        {print && <Details desk={desk} print={print} survey={history.newest} />}
        <Earlier history={history} besides={print} />
      </div>
    </section>
  );
}

type Contact = Result['metal'][string]['contact'];

function Inked(props: { survey: JobSurvey; line: string; contact: Contact; print: Print | null }) {
  const { survey, line, contact, print } = props;
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const placed = placedOn(survey, line);
  const reachMm = reachOf(placed);
  const inked = new Set(contact.inked);
  return (
    <div class="drawing still" ref={ref}>
      {widthPx > 0 &&
        (placed.length > 0 ? (
          <InkRows
            across={across(widthPx, reachMm, reachMm, 86)}
            stations={placed}
            expected={inked}
            print={print}
          />
        ) : (
          <div class="side-by-side">
            <StationPlan
              survey={survey}
              widthPx={(widthPx - 20) / 2}
              heightPx={230}
              label={say('By the numbers')}
              mark={(name) => ({ ink: inked.has(name) ? 1 : 0, text: '' })}
            />
            <StationPlan
              survey={survey}
              widthPx={(widthPx - 20) / 2}
              heightPx={230}
              label={print ? say('By the blue') : say('By the blue: no print yet')}
              mark={(name) => {
                const seen = print?.stations[name];
                return seen ? { ink: seen.shows ? 1 : 0, text: String(seen.pointsPerInch2 ?? '') } : null;
              }}
            />
          </div>
        ))}
    </div>
  );
}

/** Whether they agree; else what is likely to be the cause. */
function Together({ survey, print }: { survey: JobSurvey; print: Print }) {
  const { agree, causes, stations } = blueOnSurvey(survey, print);
  if (stations.length === 0) return null;
  const apart = stations.filter(({ expected, shows }) => expected !== shows).map(({ name }) => name);
  return (
    <div data-testid="blue-verdict" data-agree={agree}>
      <p class={`large-words ${agree ? '' : 'wrong'}`}>
        {agree
          ? say('Blue and numbers agree.')
          : say('▲ Blue and numbers disagree at {stations}. Neither overrules the other; look for:', {
              stations: stationRuns(apart, linesUnder(survey)),
            })}
      </p>
      <ul class="causes">
        {causes.map((cause) => (
          <li key={cause}>{cause}</li>
        ))}
      </ul>
    </div>
  );
}

function Details({ desk, print, survey }: { desk: Desk; print: Print; survey: JobSurvey }) {
  const { xMm } = survey.heights;
  const shape = hingeShape(print.hingesMm ?? [], Math.min(...xMm), Math.max(...xMm));
  const points = Object.values(print.stations).flatMap(({ pointsPerInch2 }) => pointsPerInch2 ?? []);
  const shares = Object.values(print.stations).flatMap(({ coverage }) => coverage ?? []);
  const hinges = (print.hingesMm ?? []).map((x) => Math.round(x)).join(say(' and '));
  return (
    <div class="print-details">
      <h2>{say('Against {reference}', { reference: print.against })}</h2>
      {points.length > 0 && <p>{say('{range} points per square inch.', { range: range(points, 1) })}</p>}
      {shares.length > 0 && <p>{say('{range} % of the area bears.', { range: range(shares, 100) })}</p>}
      {shape && (
        <p>
          {shape === 'flat'
            ? say('Turns at {hinges} mm, as a flat one does.', { hinges })
            : shape === 'crown'
              ? say('Turns at {hinges} mm, as a crowned one does.', { hinges })
              : say('Turns at {hinges} mm, as a hollow one does.', { hinges })}
        </p>
      )}
      {print.photo &&
        (desk.open.job.photos.some(({ file }) => file === print.photo?.file) ? (
          <figure class="photo">
            <img
              src={filePath(desk.open.id, print.photo.file)}
              alt={say('Photograph of the print')}
              data-testid="print-photo"
            />
            <figcaption>
              {say('{file}, SHA-256 {digest}…', {
                file: print.photo.file,
                digest: print.photo.sha256.slice(0, 12),
              })}
            </figcaption>
          </figure>
        ) : (
          <p>{say('Photo: {file}, beside the recording.', { file: print.photo.file })}</p>
        ))}
    </div>
  );
}

function range(values: readonly number[], factor: number): string {
  const [low, high] = [Math.min(...values), Math.max(...values)].map((value) => Math.round(factor * value));
  return low === high ? String(low) : say('{low} to {high}', { low: low!, high: high! });
}

/** The prints of earlier rounds, in a line each. */
function Earlier({ history, besides }: { history: History; besides: Print | null }) {
  const others = printsOf(history).filter(({ print }) => print !== besides);
  if (others.length === 0) return null;
  return (
    <div>
      <h2>{say('Earlier prints')}</h2>
      <dl class="unlike">
        {others.map(({ survey, print }, k) => {
          const shows = survey.heights.names.filter((name) => print.stations[name]?.shows);
          const { agree } = blueOnSurvey(survey, print);
          return (
            <div key={`${survey.record.no} ${k}`}>
              <dt>{capital(survey.record.round)}</dt>
              <dd>
                {say(
                  agree
                    ? 'showed at {stations}, as the numbers said'
                    : '▲ showed at {stations}, not as the numbers said',
                  {
                    stations: stationRuns(shows, linesUnder(survey)) || say('nowhere'),
                  },
                )}
              </dd>
            </div>
          );
        })}
      </dl>
    </div>
  );
}
