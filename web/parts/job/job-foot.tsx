import {
  closeJob,
  jobNote,
  jobSheets,
  logPasses,
  nextRound,
  printPlan,
  recordPrint,
  setSurface,
  setTarget,
} from '../../state/job-actions.ts';
import { usePick } from '../../state/page.ts';
import { say } from '../../words/say.ts';
import { ActionControl } from '../control.tsx';
import type { Desk } from './desk.ts';

/** Lower edge of a job: what comes next, which sheet lies on top, and the title block after ISO 7200. */
export function JobFoot({ desk }: { desk: Desk }) {
  const sheet = usePick((state) => state.job?.sheet);
  const hasSurface = desk.surface !== null;
  return (
    <footer class="foot job-foot">
      <nav class="row sheets" aria-label={say('Sheets of the job')}>
        {jobSheets.map((action) => (
          <ActionControl key={action.id} action={action} />
        ))}
        <ActionControl action={closeJob} apart />
      </nav>
      <section class="row" aria-label={say('Controls of the job')}>
        <ActionControl action={hasSurface ? nextRound : setSurface} main />
        {sheet === 'blue' ? (
          <ActionControl action={recordPrint} hides />
        ) : (
          hasSurface && <ActionControl action={logPasses} />
        )}
        {hasSurface && (sheet === 'plan' || sheet === 'rounds') && <ActionControl action={setTarget} />}
        <ActionControl action={printPlan} hides />
        {hasSurface && sheet !== 'plan' && <ActionControl action={setSurface} />}
        <ActionControl action={jobNote} />
      </section>
      <JobTitleBlock desk={desk} />
    </footer>
  );
}

function JobTitleBlock({ desk }: { desk: Desk }) {
  const { open, surface, history, by, setBy } = desk;
  const { head, changes } = open.job;
  const cells = [
    { caption: say('Part'), value: head.part },
    { caption: say('Surface'), value: surface?.name ?? say('none yet') },
    { caption: say('Owner'), value: head.owner || say('not said') },
    { caption: say('Newest round'), value: history?.newest.record.round ?? say('none yet') },
    {
      caption: say('Record'),
      value: say('change {count}, link {link}…', { count: changes.length, link: open.link.slice(0, 6) }),
    },
  ];
  return (
    <div class="title-block fixed" data-testid="job-title-block">
      {cells.map(({ caption, value }) => (
        <span key={caption}>
          <span class="caption">{`${caption} `}</span>
          <span class="value" title={value}>
            {value}
          </span>
        </span>
      ))}
      <label>
        <span class="caption">{say('By (type to change)')}</span>
        <input
          class="value"
          name="by"
          value={by}
          maxLength={60}
          autocomplete="off"
          onChange={(event) => setBy(event.currentTarget.value)}
        />
      </label>
    </div>
  );
}
