import { useCallback, useEffect, useState } from 'preact/hooks';
import { recheckBecauseOf } from '../../shared/job/job.ts';
import type { OpenJob } from '../../shared/job/open.ts';
import type { SentError } from '../../shared/messages.ts';
import { passesSince } from '../../shared/report/words.ts';
import { ActionStrip } from '../parts/action-strip.tsx';
import { BlueSheet } from '../parts/job/blue-sheet.tsx';
import { CompareSheet } from '../parts/job/compare-sheet.tsx';
import { type Desk, historyOf, surfaceOf } from '../parts/job/desk.ts';
import { JobFigure } from '../parts/job/job-figure.tsx';
import { JobFoot } from '../parts/job/job-foot.tsx';
import { JobQuestion } from '../parts/job/job-question.tsx';
import { MadeFromMap } from '../parts/job/made-from-map.tsx';
import { PapersSheet } from '../parts/job/papers-sheet.tsx';
import { PlanSheet } from '../parts/job/plan-sheet.tsx';
import { RoundsSheet } from '../parts/job/rounds-sheet.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { askJob, askLink, writeChanges, writesSoFar } from '../state/job-api.ts';
import { usePage, usePick } from '../state/page.ts';
import type { JobSheet } from '../state/page-state.ts';
import { recall, remember } from '../state/preferences.ts';
import { jobSentence, mainFigure, roundText } from '../words/job.ts';
import type { FirstNotice, Notice } from '../words/notices.ts';
import { say } from '../words/say.ts';

const sheets: Readonly<Record<JobSheet, (props: { desk: Desk }) => preact.JSX.Element | null>> = {
  rounds: RoundsSheet,
  compare: CompareSheet,
  plan: PlanSheet,
  blue: BlueSheet,
  papers: PapersSheet,
};

/** One machine or part: its surfaces from as found to as left. */
export function JobView() {
  const desk = useDesk();
  const sheet = usePick((state) => state.job?.sheet ?? 'rounds');
  const ask = usePick((state) => (state.pointing.at === 'job' ? state.pointing.ask : null));
  if (!desk) return <Opening />;
  const { surface, history, open } = desk;
  const Sheet = sheets[sheet];
  return (
    <>
      <main class="sheet job" data-sheet={ask ?? sheet} data-surface={surface?.name}>
        <header class="head two">
          <SentenceHead
            what={jobSentence(history, surface?.name ?? null)}
            context={history ? `${open.job.head.part}. ${roundText(history)}` : open.job.head.part}
          >
            <NoticeLine {...noticesOf(desk)} />
          </SentenceHead>
          {history && <JobFigure history={history} />}
        </header>
        <MadeFromMap desk={desk} />
        <div class="job-room">{ask ? <JobQuestion desk={desk} ask={ask} /> : <Sheet desk={desk} />}</div>
        {!ask && <JobFoot desk={desk} />}
      </main>
      <ActionStrip />
    </>
  );
}

function Opening() {
  const page = usePage();
  const refusal = usePick((state) => state.refusal);
  return (
    <main class="sheet job">
      <SentenceHead
        what={refusal ? say('The job cannot be opened') : say('The job is being opened')}
        context=""
      >
        <NoticeLine notice={null} />
      </SentenceHead>
      {refusal && (
        <button type="button" class="small" onClick={() => page.change({ job: null, refusal: null })}>
          {say('Back')}
        </button>
      )}
    </main>
  );
}

/** So often a page looks whether its job was changed by another page or on the command line. */
const LOOK_MS = 2000;

function useDesk(): Desk | null {
  const page = usePage();
  const looking = usePick((state) => state.job);
  const [open, setOpen] = useState<OpenJob | null>(null);
  const [own, setOwn] = useState(() => recall().by);
  const id = looking?.id ?? '';
  const [changedBy, setChangedBy] = useState<string | null>(null);
  const load = useCallback(async (): Promise<SentError | null> => {
    const { found, error } = await askJob(id);
    setOpen(found ?? null);
    setChangedBy(null);
    page.change({ refusal: error ?? null });
    return error ?? null;
  }, [id]);
  useEffect(() => void load(), [load]);
  useEffect(() => {
    if (!open || open.id !== id) return;
    const look = async () => {
      const writes = writesSoFar();
      const { found } = await askLink(id);
      if (!found || found.link === open.link || writesSoFar() !== writes) return;
      const now = (await askJob(id)).found;
      if (!now) return;
      setOpen(now);
      setChangedBy(now.job.changes.at(-1)?.by ?? null);
    };
    const timer = setInterval(() => void look(), LOOK_MS);
    return () => clearInterval(timer);
  }, [id, open]);
  if (!open || open.id !== id) return null;
  const surface = surfaceOf(open, looking?.surface ?? null);
  const by = own ?? open.job.changes.at(-1)?.by ?? say('somebody');
  const settle = async (error: SentError | undefined) => {
    if (!error) return load();
    page.change({ refusal: error });
    return error;
  };
  return {
    open,
    changedBy,
    surface,
    history: historyOf(open, surface),
    by,
    setBy(name) {
      setOwn(name);
      remember({ by: name });
    },
    settle,
    write: async (...changes) => settle((await writeChanges(id, by.trim() || '?', changes)).error),
  };
}

/** What is to be known of a job first: what was changed elsewhere, what cannot be read, then how the surface stands. */
function noticesOf(desk: Desk): FirstNotice {
  const { changedBy, open } = desk;
  const [notice = null, ...more] = [
    changedBy === null
      ? null
      : {
          text: say('{by} has changed this job elsewhere: it is drawn as it is now.', { by: changedBy }),
          warns: false,
        },
    ...open.unreadable.map(({ record: { file, surface, round }, problem }) => ({
      text: say('{file} cannot be read, so {surface}, {round}, is left out: {problem}.', {
        file,
        surface,
        round,
        problem,
      }),
      warns: true,
    })),
    noticeOf(desk),
  ].filter((each) => each !== null);
  return { notice, more };
}

/** The most urgent thing to know of a surface. */
function noticeOf({ open, surface, history }: Desk): Notice | null {
  if (!surface || !history) return null;
  const warns = (text: string): Notice => ({ text, warns: true });
  const recheck = recheckBecauseOf(open.job, surface.name);
  if (recheck.length > 0) {
    const others = recheck.join(', ');
    return warns(
      say('Check it again: {others} was scraped after this was last measured, and this was made from it.', {
        others,
      }),
    );
  }
  if (surface.passesSince.length > 0) {
    return warns(say('{passes} scraped since: measure it again.', { passes: passesSince(surface) }));
  }
  const verdict = mainFigure(history)?.verdict;
  return verdict?.reason ? warns(say('Cannot tell: {reason}.', { reason: verdict.reason })) : null;
}
