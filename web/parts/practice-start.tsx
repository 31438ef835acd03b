import { useState } from 'preact/hooks';
import { type Planted, plantableIn } from '../../shared/session/planted.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { usePage } from '../state/page.ts';
import { practiceSetup } from '../state/practice-setup.ts';
import { type Kind, kindWords } from '../words/kinds.ts';
import { plantedWord } from '../words/planted.ts';
import { say } from '../words/say.ts';
import { Control } from './control.tsx';
import { Choice } from './field.tsx';

const kinds = Object.keys(kindWords) as Kind[];

/** What to practise on, and what may be wrong: one of the faults ticked here is planted, unseen. */
export function PracticeStart() {
  const page = usePage();
  const [kind, setKind] = useState<Kind>('way');
  const [left, setLeft] = useState<ReadonlySet<Planted>>(new Set());
  const setup = practiceSetup(kind);
  const possible = plantableIn(setupSchema.parse(setup));
  const chosen = possible.filter((fault) => !left.has(fault));
  const toggle = (fault: Planted) => {
    const next = new Set(left);
    if (!next.delete(fault)) next.add(fault);
    setLeft(next);
  };
  return (
    <section class="practice-start" data-testid="practice-start" aria-label={say('Practise')}>
      <p class="soft">
        {say(
          'You walk a simulated instrument. One of the faults ticked here is planted, unseen; in the end you say which, and are told when it could be seen. Who teaches ticks one and hands over.',
        )}
      </p>
      <Choice
        label={say('Practise on')}
        name="practice-kind"
        value={kind}
        options={kinds.map((each) => [each, kindWords[each].name] as const)}
        onChoose={(value) => setKind(kinds.find((each) => each === value) ?? 'way')}
      />
      <fieldset class="row faults" aria-label={say('What may be wrong')}>
        {possible.map((fault) => (
          <label key={fault} class="tick-box">
            <input
              type="checkbox"
              name={`fault-${fault}`}
              checked={!left.has(fault)}
              onChange={() => toggle(fault)}
            />
            {plantedWord(fault)}
          </label>
        ))}
      </fieldset>
      <Control
        word={say('Begin')}
        hint={say('walk it yourself, or let it walk')}
        kind="main"
        testId="practise-begin"
        disabled={chosen.length === 0}
        onClick={() =>
          void page.send({ do: 'start', setup: setupSchema.parse(setup), practice: [...chosen] })
        }
      />
    </section>
  );
}
