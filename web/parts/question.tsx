import type { CommandInput } from '../../shared/messages.ts';
import type { Session } from '../../shared/session/fold.ts';
import { placeWords } from '../../shared/survey/plan.ts';
import { runNow } from '../state/on-plan.ts';
import { usePage, usePick } from '../state/page.ts';
import { lastTake, nothing } from '../state/page-state.ts';
import { runTitle } from '../words/sentence.ts';
import { Conditions } from './conditions.tsx';
import { FinishQuestion } from './finish-question.tsx';
import { PlaceQuestion } from './place-question.tsx';
import { Reasons } from './reasons.tsx';
import { TextQuestion } from './text-question.tsx';
import { UnitAlarm } from './unit-alarm.tsx';

const undoReasons = ['bumped', 'dirt under a foot', 'wrong place', 'not settled'];
const skipReasons = ['out of reach', 'metal is damaged there', 'something is in the way'];

/** Where several runs are wanted, the one that is on can be given up as a whole. */
function wholeRun(session: Session, leaveOut: (run: string) => void) {
  const run = runNow(session);
  if (!run || session.runs.length < 2) return null;
  const word = run.reads === 'tilt' ? 'Leave the walk out' : 'Leave the sweep out';
  return { word, hint: runTitle(session, run), run: () => leaveOut(run.id) };
}

/** The question that stands in the place of the controls until it is answered or closed with Escape. */
export function Question() {
  const page = usePage();
  const pointing = usePick((state) => state.pointing);
  const session = usePick((state) => state.session);
  if (!session) return null;
  if (session.unitAlarm)
    return <UnitAlarm unit={session.unitAlarm} expected={session.setup.instrument.unit} />;
  /** The question stays open when the answer is refused. */
  const answer = async (command: CommandInput) => {
    if (!(await page.send(command))) page.point(nothing);
  };
  const { next } = session;
  const last = lastTake(session)?.event;
  switch (pointing.at) {
    case 'undo':
      return last ? (
        <Reasons
          title={`What was wrong with ${placeWords(last.place)}?`}
          reasons={undoReasons}
          onAnswer={(reason) => answer({ do: 'void', take: last.seq, reason })}
        />
      ) : null;
    case 'skip':
      return next ? (
        <Reasons
          title={`Why is ${placeWords(next)} skipped?`}
          reasons={skipReasons}
          instead={wholeRun(session, (run) => void answer({ do: 'run', run, on: false }))}
          onAnswer={(reason) => answer({ do: 'skip', place: next, reason })}
        />
      ) : null;
    case 'note':
      return (
        <TextQuestion
          title={next ? `Note at ${placeWords(next)}` : 'Note'}
          answer="Keep the note"
          longest={2000}
          testId="note-text"
          onAnswer={(text) => answer({ do: 'note', text, ...(next && { place: next }) })}
        />
      );
    case 'finish':
      return <FinishQuestion open={session.placements.length - session.counted.size} />;
    case 'place':
      return <PlaceQuestion place={pointing.place} />;
    case 'conditions':
      return <Conditions />;
    default:
      return null;
  }
}
