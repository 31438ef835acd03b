import { plantedFaults } from '../../shared/session/planted.ts';
import { usePage, usePick } from '../state/page.ts';
import { plantedTold, plantedWord } from '../words/planted.ts';
import { say } from '../words/say.ts';
import { Control } from './control.tsx';

/** After a survey for practice: what was wrong with it? Then it is told. */
export function Practice() {
  const page = usePage();
  const planted = usePick(({ session }) => session?.header.simulated?.planted);
  const guess = usePick((state) => state.guess);
  if (planted === undefined) return null;
  if (guess === null) {
    return (
      <section class="lesson practice" data-testid="practice">
        <h2>{say('What was wrong with this survey?')}</h2>
        <fieldset class="row" aria-label={say('Your answer')}>
          {plantedFaults.map((fault) => (
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
      <p>{plantedTold(planted)}</p>
      <p class="soft">{say('Lay the true shape over it to see what it cost.')}</p>
    </section>
  );
}
