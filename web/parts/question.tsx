import { usePage, usePick } from '../state/page.ts';
import { close } from '../state/actions.ts';
import { lastTake, nothing } from '../state/page-state.ts';
import { unitWord } from '../words/live.ts';
import { pairText } from '../words/sentence.ts';
import { Conditions } from './conditions.tsx';
import { Control, Row } from './control.tsx';
import { NoteQuestion } from './note-question.tsx';
import { PlaceQuestion } from './place-question.tsx';
import { Reasons } from './reasons.tsx';

const undoReasons = ['bumped', 'dirt under a foot', 'wrong place', 'not settled'];
const skipReasons = ['out of reach', 'metal is damaged there', 'something is in the way'];

/** The question that stands in the place of the controls until it is answered or closed with Escape. */
export function Question() {
  const page = usePage();
  const pointing = usePick((state) => state.pointing);
  const session = usePick((state) => state.session);
  if (!session) return null;
  if (session.unitAlarm) return <UnitAlarm unit={session.unitAlarm} expected={session.setup.level.unit} />;
  switch (pointing.at) {
    case 'undo': {
      const last = lastTake(session)?.event;
      if (!last) return null;
      return (
        <Reasons
          title={`What was wrong with ${pairText(last.place)}?`}
          reasons={undoReasons}
          onAnswer={async (reason) => {
            if (!(await page.send({ do: 'void', take: last.seq, reason }))) page.point(nothing);
          }}
        />
      );
    }
    case 'skip': {
      const { next } = session;
      if (!next) return null;
      return (
        <Reasons
          title={`Why is ${pairText(next)} skipped?`}
          reasons={skipReasons}
          onAnswer={async (reason) => {
            if (!(await page.send({ do: 'skip', place: next, reason }))) page.point(nothing);
          }}
        />
      );
    }
    case 'note':
      return <NoteQuestion />;
    case 'finish':
      return <FinishQuestion open={session.plan.length - session.counted.size} />;
    case 'place':
      return <PlaceQuestion place={pointing.place} />;
    case 'conditions':
      return <Conditions />;
    default:
      return null;
  }
}

function FinishQuestion({ open }: { open: number }) {
  const page = usePage();
  const left = open === 0 ? '' : ` ${open === 1 ? 'One reading is' : `${open} readings are`} still open.`;
  return (
    <div class="question" role="group" aria-label="Finish">
      <h2>{`Finish this survey?${left}`}</h2>
      <Row>
        <Control
          word="Finish"
          hint="enter"
          kind="main"
          takesFocus
          testId="finish-yes"
          onClick={async () => {
            if (!(await page.send({ do: 'finish' }))) page.point(nothing);
          }}
        />
        <Control word="Not yet" hint="escape" apart onClick={() => close(page)} />
      </Row>
    </div>
  );
}

/** A changed unit stops everything else, because every number after it would mean something else. */
function UnitAlarm({ unit, expected }: { unit: string; expected: string }) {
  const page = usePage();
  return (
    <div class="question" role="alertdialog" aria-label="The unit has changed" data-testid="unit-alarm">
      <h2>{`The level now shows ${unitWord(unit)}; this survey is in ${unitWord(expected)}.`}</h2>
      <p>Nothing is taken until you have seen this. Readings are converted from now on.</p>
      <Row>
        <Control
          word="I have seen it"
          hint="enter"
          kind="main"
          takesFocus
          onClick={() => void page.send({ do: 'acknowledge-unit' })}
        />
      </Row>
    </div>
  );
}
