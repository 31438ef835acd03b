import { useEffect, useState } from 'preact/hooks';
import type { JobList } from '../../../shared/job/wire.ts';
import { capital } from '../../../shared/report/words.ts';
import { askJobs, newJob } from '../../state/job-api.ts';
import { usePage } from '../../state/page.ts';
import { dayText } from '../../words/job.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { Field } from '../field.tsx';

/** The jobs of this computer, the one that was worked on last first, and the way to a new one. */
export function Jobs({ main }: { main?: boolean }) {
  const page = usePage();
  const [list, setList] = useState<JobList>([]);
  const [begins, setBegins] = useState(false);
  useEffect(() => {
    void askJobs().then(({ found, error }) => (error ? page.change({ refusal: error }) : setList(found)));
  }, []);
  const open = (id: string) => page.change({ job: { id, surface: null, sheet: 'rounds' }, refusal: null });
  return (
    <section aria-labelledby="jobs-title" class="jobs">
      <h2 id="jobs-title">{say('Jobs, from as found to as left')}</h2>
      <div class="job-cards">
        {list.map(({ id, part, changedAt, surfaces, problem }, k) => (
          <Control
            key={id}
            word={part}
            hint={problem ?? cardText({ changedAt, surfaces })}
            kind={main && k === 0 ? 'main' : 'plain'}
            testId={`open-job-${id}`}
            onClick={() => open(id)}
          />
        ))}
        <Control
          word={say('New job')}
          hint={say('a machine or part')}
          pressed={begins}
          testId="new-job"
          onClick={() => setBegins(!begins)}
        />
      </div>
      {begins && <NewJob onMade={open} />}
    </section>
  );
}

function cardText({ changedAt, surfaces }: Pick<JobList[number], 'changedAt' | 'surfaces'>): string {
  const each = surfaces.map(({ name, rounds }) =>
    rounds.length === 0
      ? say('{surface} not measured', { surface: capital(name) })
      : say('{surface} {round}', { surface: capital(name), round: rounds.at(-1)! }),
  );
  return [
    each.join(' · ') || say('No surface yet'),
    changedAt ? say('changed {day}', { day: dayText(changedAt) }) : '',
  ]
    .filter(Boolean)
    .join(', ');
}

function NewJob({ onMade }: { onMade(id: string): void }) {
  const page = usePage();
  const [part, setPart] = useState('');
  const [owner, setOwner] = useState('');
  const begin = async () => {
    if (!part.trim()) return;
    const { found, error } = await newJob(part.trim(), owner.trim());
    if (error) page.change({ refusal: error });
    else onMade(found.id);
  };
  return (
    <form
      class="new-job"
      onSubmit={(event) => {
        event.preventDefault();
        void begin();
      }}
    >
      <div class="fields two">
        <Field label={say('Machine or part')} name="job-part" value={part} focus onInput={setPart} />
        <Field label={say('For whom')} name="job-owner" value={owner} onInput={setOwner} />
      </div>
      <Row>
        <Control
          word={say('Begin the job')}
          hint={say('enter')}
          submit
          disabled={!part.trim()}
          testId="begin-job"
        />
      </Row>
    </form>
  );
}
