import { isWayscribeError } from '../../shared/errors.ts';
import { type ComparedLine, compared } from '../../shared/replay/compared.ts';
import { type Habits, habitsOf } from '../../shared/replay/habits.ts';
import type { Session } from '../../shared/session/fold.ts';
import { CompareDrawing } from '../drawing/compare-drawing.tsx';
import { ActionStrip } from '../parts/action-strip.tsx';
import { BesideChoice } from '../parts/beside-choice.tsx';
import { Control } from '../parts/control.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import type { Playback } from '../state/replay.ts';
import { replaying } from '../state/replaying.ts';
import { compareSentence, compareTitle, habitRows } from '../words/compare.ts';
import { lineTitle } from '../words/kinds.ts';
import { asWritten } from '../words/quantity.ts';
import { say } from '../words/say.ts';
import { heightText, signedSize } from '../words/signed.ts';

/** Two recordings of one part: the heights on one scale, and how each was measured. */
export function CompareView() {
  const page = usePage();
  const replay = usePick((state) => state.replay);
  if (!replay) return null;
  const first = finished(replay.playback);
  const second = replay.beside && finished(replay.beside);
  const lines = second && attempt(first.session, second.session);
  const wrong = typeof lines === 'string' ? { text: lines, warns: true } : null;
  const found = lines && typeof lines !== 'string' ? lines : null;
  return (
    <>
      <main class="sheet compare" data-testid="compare">
        <SentenceHead
          what={second ? compareSentence(found) : say('Hold another recording against this one')}
          context={
            second
              ? say(
                  'Heights over the line through the ends, both on one scale. Drawn through: {first}. Dashed: {second}.',
                  {
                    first: compareTitle(first.session),
                    second: compareTitle(second.session),
                  },
                )
              : say(
                  'A learner’s and a teacher’s, yesterday’s and today’s: of the same part, with the same stations.',
                )
          }
        >
          <NoticeLine notice={wrong} />
        </SentenceHead>
        {!second && <BesideChoice first={first.session} />}
        {found?.map((line) => (
          <Line key={line.line} line={line} session={first.session} />
        ))}
        {second && <HabitTable first={first.habits} second={second.habits} />}
        <div class="row">
          <Control
            word={say('Back to the replay')}
            hint={say('escape')}
            testId="compare-back"
            onClick={() => page.point(nothing)}
          />
          {second && (
            <Control
              word={say('Choose another')}
              hint={say('in place of the dashed one')}
              testId="beside-another"
              onClick={() => page.turn((state) => replaying(state, (known) => ({ ...known, beside: null })))}
            />
          )}
        </div>
      </main>
      <ActionStrip />
    </>
  );
}

function Line({ line, session }: { line: ComparedLine; session: Session }) {
  const unit = asWritten().head();
  return (
    <section class="compared">
      <h2>{lineTitle(session.setup, line.line)}</h2>
      <CompareDrawing line={line} />
      <table>
        <thead>
          <tr>
            <th scope="col">{say('Station')}</th>
            <th scope="col">{say('This one {unit}', { unit })}</th>
            <th scope="col">{say('The other {unit}', { unit })}</th>
            <th scope="col">{say('The other less this one {unit}', { unit })}</th>
          </tr>
        </thead>
        <tbody>
          {line.stations.map(({ name, firstUm, secondUm, differenceUm, uUm, differs }) => (
            <tr key={name} class={differs ? 'differs' : ''}>
              <th scope="row">{name}</th>
              <td>{signedSize(firstUm, 1)}</td>
              <td>{signedSize(secondUm, 1)}</td>
              <td>{heightText({ heightUm: differenceUm, uUm }, 1)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function HabitTable({ first, second }: { first: Habits; second: Habits }) {
  return (
    <table class="habits" data-testid="habits">
      <thead>
        <tr>
          <th scope="col">{say('How it was measured')}</th>
          <th scope="col">{say('This one')}</th>
          <th scope="col">{say('The other')}</th>
        </tr>
      </thead>
      <tbody>
        {habitRows(first, second).map(([what, one, other]) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>{one}</td>
            <td>{other}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A recording at its end. */
function finished({ folded, recorded, marks }: Playback) {
  const session = folded.at(recorded.seq.length - 1);
  return { session, habits: habitsOf(session, marks, recorded.atMs.at(-1) ?? 0) };
}

function attempt(first: Session, second: Session): ComparedLine[] | string {
  try {
    return compared(first, second);
  } catch (error) {
    if (isWayscribeError(error)) return `${error.place}: ${error.detail}. ${error.remedy}.`;
    throw error;
  }
}
