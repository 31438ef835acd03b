import { useEffect, useState } from 'preact/hooks';
import type { JobList } from '../../../shared/job/wire.ts';
import type { Session } from '../../../shared/session/fold.ts';
import { askJobs, newJob, takeRecording } from '../../state/job-api.ts';
import { type Page, usePage, usePick } from '../../state/page.ts';
import type { OpenedJob } from '../../state/page-state.ts';
import { surveyResult } from '../../state/survey-result.ts';
import { say } from '../../words/say.ts';
import { Control } from '../control.tsx';

/** On a finished survey that belongs to a job: accepts it as a round of its surface. */
export function KeepInJob() {
  const page = usePage();
  const { session, job } = useFitting();
  if (!session || !job) return null;
  return (
    <Control
      word={say('Accept')}
      hint={say('keeps it as {round} of {part}', { round: session.setup.round, part: job.part })}
      kind="main"
      testId="keep-in-job"
      onClick={() => void keep(page, session, job.id, 'rounds')}
    />
  );
}

/** On a finished survey that belongs to no job yet: begins one with it, where its report is made. */
export function BeginJob() {
  const page = usePage();
  const { session, job } = useFitting();
  // Pressed twice it begins one job.
  const [begun, setBegun] = useState(false);
  if (!session || job !== null || !surveyResult(session, 'ends')) return null;
  const begin = async () => {
    setBegun(true);
    const { found, error } = await newJob(session.setup.part, '');
    if (!error) return keep(page, session, found.id, 'papers');
    page.change({ refusal: error });
    setBegun(false);
  };
  return (
    <Control
      word={say('Report')}
      hint={say('begins a job')}
      disabled={begun}
      testId="begin-job-with-it"
      onClick={() => void begin()}
    />
  );
}

/** The finished survey that is open, and the job that it is a new round of; undefined while that is asked. */
function useFitting(): { session: Session | null; job: JobList[number] | null | undefined } {
  const session = usePick((state) => state.session);
  const opened = usePick((state) => state.job?.id ?? null);
  const replay = usePick((state) => state.replay !== null);
  const [list, setList] = useState<JobList | null>(null);
  useEffect(() => void askJobs().then(({ found }) => setList(found ?? [])), []);
  if (!session?.ended || replay || !list) return { session: null, job: undefined };
  const { setup } = session;
  const job = list.find(({ id, part, surfaces }) => {
    const known = surfaces.find(({ name }) => name === setup.surface);
    const fresh = !known?.rounds.includes(setup.round);
    return fresh && (opened === null ? part === setup.part && known !== undefined : id === opened);
  });
  return { session, job: job ?? null };
}

async function keep(page: Page, { header, setup }: Session, id: string, sheet: OpenedJob['sheet']) {
  const { error } = await takeRecording(id, header.id, { by: setup.operator || say('somebody') });
  if (error) return page.change({ refusal: error });
  page.change({ job: { id, surface: setup.surface, sheet } });
  await page.send({ do: 'leave' });
}
