import { useEffect, useState } from 'preact/hooks';
import type { JobList } from '../../../shared/job/wire.ts';
import { askJobs, takeRecording } from '../../state/job-api.ts';
import { usePage, usePick } from '../../state/page.ts';
import { say } from '../../words/say.ts';
import { Control } from '../control.tsx';

/** On a finished survey that belongs to a job: accepts it as a round of its surface. */
export function KeepInJob() {
  const page = usePage();
  const session = usePick((state) => state.session);
  const opened = usePick((state) => state.job?.id ?? null);
  const replay = usePick((state) => state.replay !== null);
  const [list, setList] = useState<JobList>([]);
  useEffect(() => void askJobs().then(({ found }) => setList(found ?? [])), []);
  if (!session?.ended || replay) return null;
  const { header, setup } = session;
  const job = list.find(({ id, part, surfaces }) => {
    const known = surfaces.find(({ name }) => name === setup.surface);
    const fresh = !known?.rounds.includes(setup.round);
    return fresh && (opened === null ? part === setup.part && known !== undefined : id === opened);
  });
  if (!job) return null;
  const keep = async () => {
    const by = setup.operator || say('somebody');
    const { error } = await takeRecording(job.id, header.id, { by });
    if (error) return page.change({ refusal: error });
    page.change({ job: { id: job.id, surface: setup.surface, sheet: 'rounds' } });
    await page.send({ do: 'leave' });
  };
  return (
    <Control
      word={say('Accept')}
      hint={say('keeps it as {round} of {part}', { round: setup.round, part: job.part })}
      kind="main"
      testId="keep-in-job"
      onClick={() => void keep()}
    />
  );
}
