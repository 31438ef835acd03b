import { provedOf, provedSentence } from '../../../shared/proving/instruments.ts';
import { progressOf } from '../../../shared/proving/progress.ts';
import type { Proving } from '../../../shared/proving/proving.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { NoticeLine } from '../notice-line.tsx';
import { SentenceHead } from '../sentence-head.tsx';
import { stepName } from './instructions.ts';
import { useKeys } from './use-keys.ts';

interface OutcomeProps {
  readonly proving: Proving;
  onUse(): void;
  onKeep(): void;
  onAgain(): void;
}

/** What was proved, in one sentence, and what it rests on. */
export function Outcome({ proving, onUse, onKeep, onAgain }: OutcomeProps) {
  useKeys({ enter: onUse, k: onKeep, r: onAgain });
  const { verdicts } = progressOf(proving);
  return (
    <>
      <header class="head one">
        <SentenceHead
          what={provedSentence(provedOf(proving, 0, '1970-01-01'))}
          context={
            proving.by
              ? say(
                  'Remembered with today’s date and with {person}; it goes on every record that is made with it.',
                  { person: proving.by },
                )
              : say('Remembered with today’s date; it goes on every record that is made with it.')
          }
        >
          <NoticeLine notice={null} />
        </SentenceHead>
      </header>
      <ol class="steps" data-testid="steps">
        {verdicts.map(({ step, sentence, is }) => (
          <li key={step} data-step={step} data-is={is}>
            <h2>{stepName(step)}</h2>
            <p>{sentence}</p>
          </li>
        ))}
      </ol>
      <Row>
        <Control word={say('Use it')} hint={say('enter')} kind="main" testId="use-it" onClick={onUse} />
        <Control word={say('Keep it, prove another')} hint="K" testId="keep-it" onClick={onKeep} />
        <Control word={say('Last step again')} hint="R" apart onClick={onAgain} />
      </Row>
    </>
  );
}
