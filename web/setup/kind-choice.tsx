import { type Kind, kindWords } from '../words/kinds.ts';

interface KindChoiceProps {
  readonly kind: Kind;
  onChoose(kind: Kind): void;
}

/** The first question: what is measured, in large words. */
export function KindChoice({ kind, onChoose }: KindChoiceProps) {
  return (
    <fieldset class="kinds" aria-label="What is measured">
      {(Object.keys(kindWords) as Kind[]).map((each) => (
        <label key={each} class="control" data-on={each === kind}>
          <input
            type="radio"
            name="kind"
            value={each}
            checked={each === kind}
            data-testid={`kind-${each}`}
            onChange={() => onChoose(each)}
          />
          <span class="word">{kindWords[each].name}</span>
          <span class="hint">{kindWords[each].what}</span>
        </label>
      ))}
    </fieldset>
  );
}
