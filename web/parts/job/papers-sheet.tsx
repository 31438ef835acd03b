import { useState } from 'preact/hooks';
import type { JobVerdict } from '../../../shared/job/wire.ts';
import { capital } from '../../../shared/report/words.ts';
import { askVerdict, filePath, keepReport, reportPath, surveyPath, zipPath } from '../../state/job-api.ts';
import { dayText, verdictWords } from '../../words/job.ts';
import { say } from '../../words/say.ts';
import { Control } from '../control.tsx';
import { BringIn } from './bring-in.tsx';
import { ChangesList } from './changes-list.tsx';
import type { Desk } from './desk.ts';

/** What is taken home, what is brought in, and the proof that all of it is as it was written. */
export function PapersSheet({ desk }: { desk: Desk }) {
  const { id } = desk.open;
  const [verdict, setVerdict] = useState<JobVerdict | null>(null);
  const [kept, setKept] = useState('');
  const by = desk.by.trim() || '?';
  const verify = async () => {
    const { found, error } = await askVerdict(id);
    if (!found) return void desk.settle(error);
    setVerdict(found);
  };
  const keep = async () => {
    const { found, error } = await keepReport(id, by);
    if (!found) return void desk.settle(error);
    setKept(found.file);
  };
  return (
    <section class="two-columns" aria-label={say('Papers')}>
      <div class="column-of">
        <div class="row papers">
          <a
            class="control main"
            href={reportPath(id, by)}
            target="_blank"
            rel="noopener"
            data-testid="job-report"
          >
            <span class="word">{say('Report')}</span>
            <span class="hint">{say('opens beside this; print it there')}</span>
          </a>
          <Control
            word={say('Verify')}
            hint={say('every line and digest')}
            testId="job-verify"
            onClick={() => void verify()}
          />
          <a class="control" href={zipPath(id)} download={`${id}.zip`} data-testid="job-zip">
            <span class="word">{say('Whole job')}</span>
            <span class="hint">{say('one zip file')}</span>
          </a>
          <Control
            word={say('Keep report')}
            hint={say('a copy in the job')}
            testId="job-keep-report"
            onClick={() => void keep()}
          />
        </div>
        <div role="status">
          {kept !== '' && (
            <p>{say('The report is kept as {file}; nothing was overwritten.', { file: kept })}</p>
          )}
          {verdict && (
            <div class="verified" data-testid="verified" data-sound={verdict.problems.length === 0}>
              {verdictWords(verdict).map((sentence) => (
                <p key={sentence} class={`large-words ${verdict.problems.length > 0 ? 'wrong' : ''}`}>
                  {verdict.problems.length > 0 ? `▲ ${sentence}` : sentence}
                </p>
              ))}
            </div>
          )}
        </div>
        <BringIn desk={desk} />
        <Notes desk={desk} />
        <ChangesList desk={desk} />
      </div>
      <div class="column-of">
        <h2>{say('Surveys of {surface}', { surface: desk.surface?.name ?? say('the job') })}</h2>
        <Surveys desk={desk} />
      </div>
    </section>
  );
}

function Surveys({ desk: { open, surface } }: { desk: Desk }) {
  const own = open.surveys.filter(({ record }) => record.surface === surface?.name);
  if (own.length === 0) return <p>{say('There is none yet.')}</p>;
  return (
    <table class="job-table" data-testid="job-surveys">
      <tbody>
        {own.toReversed().map(({ record: { no, round, at, file, link } }) => (
          <tr key={no}>
            <th scope="row">{capital(round)}</th>
            <td class="minor">{dayText(at)}</td>
            <td class="exports">
              <a href={filePath(open.id, file)} download={file}>
                {link === null ? say('as it came') : say('recording')}
              </a>
              {link !== null && <a href={surveyPath(open.id, no, 'readings.csv')}>{say('table')}</a>}
              <a href={surveyPath(open.id, no, 'sheet.json')}>{say('sheet')}</a>
              <a href={surveyPath(open.id, no, 'result.json')}>{say('result')}</a>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Notes({ desk }: { desk: Desk }) {
  const { notes } = desk.open.job;
  if (notes.length === 0) return null;
  return (
    <>
      <h2>{say('Notes')}</h2>
      <ul class="plain-list">
        {notes.toReversed().map(({ no, at, by, text }) => (
          <li key={no}>{say('{day}, {by}: {text}', { day: dayText(at), by, text })}</li>
        ))}
      </ul>
    </>
  );
}
