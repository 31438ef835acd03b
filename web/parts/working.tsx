import type { Session } from '../../shared/session/fold.ts';
import type { TiltRun } from '../../shared/survey/plan.ts';
import { referenceWord } from '../../shared/words.ts';
import { behindLit, strengths, weightsOf } from '../state/behind-lit.ts';
import { usePick } from '../state/page.ts';
import type { Reference } from '../state/page-state.ts';
import { surveyResult } from '../state/survey-result.ts';
import { kindWords } from '../words/kinds.ts';
import { say } from '../words/say.ts';
import { AcrossTable } from './working-across.tsx';
import { SweepTable, sweepWords } from './working-sweeps.tsx';
import { WalkTable } from './working-walks.tsx';
import { Why } from './working-why.tsx';

/** The arithmetic as it would be done on paper, run by run, and beside it what all readings together say. */
export function Working({ session, reference }: { session: Session; reference: Reference }) {
  const survey = surveyResult(session, reference);
  const lit = usePick((state) => state.lit);
  const behind = lit && survey ? behindLit(session, survey, lit, reference) : [];
  const weights = lit && lit.is !== 'reading' ? weightsOf(behind) : null;
  const shown = { session, survey, reference, lit, lights: strengths(behind), weights };
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
      {survey && <Why session={session} survey={survey} lit={lit} behind={behind} />}
      <div class="walks">
        {walks.map((run) =>
          session.setup.kind === 'bed' && run.id === 'across' ? (
            <AcrossTable key={run.id} run={run} {...shown} />
          ) : (
            <WalkTable key={run.id} run={run} {...shown} />
          ),
        )}
        {[...swept].map((line) => (
          <SweepTable key={line} line={line} {...shown} />
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
