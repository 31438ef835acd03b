import { useEffect } from 'preact/hooks';
import { Devices } from '../parts/devices.tsx';
import { Help } from '../parts/help.tsx';
import { putInSetups } from '../parts/proving/use-proved.ts';
import { Watching } from '../parts/watching.tsx';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { measureIn } from '../words/quantity.ts';
import { written } from '../words/reader.ts';
import { CompareView } from './compare.tsx';
import { JobView } from './job.tsx';
import { ProvingView } from './proving.tsx';
import { ResultView } from './result.tsx';
import { SetupView } from './setup.tsx';
import { StartView } from './start.tsx';
import { SurveyView } from './survey.tsx';
import { Waiting } from './waiting.tsx';

/** Which sheet lies on the desk: it follows from the session and from what the person points at. */
export function App() {
  const page = usePage();
  const view = usePick(({ greeted, session, pointing, replay, job }) => {
    if (!greeted) return 'waiting';
    if (replay && pointing.at === 'compare') return 'compare';
    if (!session && (pointing.at === 'setup' || pointing.at === 'proving')) return pointing.at;
    if (!session) return job ? 'job' : 'start';
    return session.ended ? 'result' : 'survey';
  });
  const help = usePick((state) => state.help);
  // In another language everything is drawn anew.
  const language = usePick((state) => state.language);
  const link = usePick((state) => state.link);
  const playing = usePick(({ replay }) =>
    !replay ? undefined : replay.writing ? 'written' : replay.lesson ? 'taught' : 'plain',
  );
  const seq = usePick((state) => state.session?.seq ?? 0);
  // Before anything below is drawn: one survey is told in one measure.
  measureIn(usePick((state) => state.session?.setup.lengthUnit ?? 'mm'));
  const title = usePick(({ session }) =>
    session ? `${session.setup.part}, ${written(session.setup.surface)}` : '',
  );
  useEffect(() => {
    document.title = title ? `${title} · Wayscribe` : 'Wayscribe';
  }, [title]);
  return (
    <div
      key={language}
      class="desk"
      data-testid="root"
      data-seq={seq}
      data-view={view}
      data-link={link}
      data-replay={playing}
    >
      <p class="unseen" role="status" data-testid="connection" data-link={link}>
        {link === 'open' ? 'connected' : link === 'lost' ? 'connection lost' : 'connecting'}
      </p>
      <Watching />
      {view === 'waiting' && <Waiting />}
      {view === 'start' && <StartView />}
      {view === 'setup' && <SetupView />}
      {view === 'proving' && (
        <ProvingView
          onUse={(proving) => {
            putInSetups(proving);
            page.point({ at: 'setup' });
          }}
          onLeave={() => page.point(nothing)}
        />
      )}
      {view === 'compare' && <CompareView />}
      {view === 'job' && <JobView />}
      {view === 'survey' && <SurveyView />}
      {view === 'result' && <ResultView />}
      <Devices />
      {help && <Help />}
    </div>
  );
}
