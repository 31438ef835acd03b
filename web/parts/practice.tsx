import { plantableIn } from '../../shared/session/planted.ts';
import { firstSign } from '../state/first-sign.ts';
import { usePage, usePick } from '../state/page.ts';
import { plantedSeen, plantedTold, plantedWord } from '../words/planted.ts';
import { say } from '../words/say.ts';
import { Control } from './control.tsx';

/** After a survey for practice: what was wrong with it? Then it is told, and when it could have been seen. */
export function Practice() {
  const page = usePage();
  const session = usePick((state) => state.session);
  const guess = usePick((state) => state.guess);
  const planted = session?.header.simulated?.planted;
  if (!session || planted === undefined) return null;
  if (guess === null) {
    return (
      <section class="lesson practice" data-testid="practice">
        <h2>{say('What was wrong with this survey?')}</h2>
        <fieldset class="row" aria-label={say('Your answer')}>
          {plantableIn(session.setup).map((fault) => (
            <Control
              key={fault}
              word={plantedWord(fault)}
              testId={`guess-${fault}`}
              onClick={() => page.change({ guess: fault })}
            />
          ))}
        </fieldset>
      </section>
    );
  }
  return (
    <section class="lesson practice" data-testid="practice-told" aria-live="polite">
      <h2>
        {guess === planted
          ? say('Found: {fault}', { fault: plantedWord(planted) })
          : say('It was: {fault}', { fault: plantedWord(planted) })}
      </h2>
      <p>{[plantedTold(planted), ...plantedSeen(session, firstSign(session))].join(' ')}</p>
      <p class="soft">{say('Lay the true shape over it to see what it cost.')}</p>
    </section>
  );
}
