import { useState } from 'preact/hooks';
import { close } from '../state/actions.ts';
import { usePage } from '../state/page.ts';
import { Asking } from './asking.tsx';
import { Control, Row } from './control.tsx';
import { TextQuestion } from './text-question.tsx';

interface ReasonsProps {
  readonly title: string;
  readonly reasons: readonly string[];
  onAnswer(reason: string): void;
  /** Another way out than to give a reason. */
  readonly instead?: { readonly word: string; readonly hint: string; run(): void } | null;
}

/** Asks why: one touch, one digit, or a few words of one's own. */
export function Reasons({ title, reasons, onAnswer, instead }: ReasonsProps) {
  const page = usePage();
  const [other, setOther] = useState(false);
  if (other) return <TextQuestion title={title} answer="That is why" longest={300} onAnswer={onAnswer} />;
  return (
    <Asking
      title={title}
      testId="reasons"
      onKey={(key) => {
        const reason = reasons[Number(key) - 1];
        if (reason) onAnswer(reason);
        else if (Number(key) === reasons.length + 1) setOther(true);
        else if (instead && key.toLowerCase() === 'l') instead.run();
        else return false;
        return true;
      }}
    >
      <Row>
        {reasons.map((reason, k) => (
          <Control
            key={reason}
            word={reason}
            hint={String(k + 1)}
            testId={`reason-${k + 1}`}
            onClick={() => onAnswer(reason)}
          />
        ))}
        <Control word="other" hint={`${reasons.length + 1}, in your words`} onClick={() => setOther(true)} />
        {instead && (
          <Control word={instead.word} hint={`L, ${instead.hint}`} testId="instead" onClick={instead.run} />
        )}
        <Control word="Leave it" hint="escape" onClick={() => close(page)} />
      </Row>
    </Asking>
  );
}
