import { useEffect, useId, useRef } from 'preact/hooks';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly focus?: boolean;
  readonly name?: string;
  readonly wide?: boolean;
  onInput(value: string): void;
  onBlur?(): void;
}

/** One line to fill in: its label above, what is wrong with it straight below. */
export function Field({ label, value, hint, error, focus, name, wide, onInput, onBlur }: FieldProps) {
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (focus) field.current?.focus();
  }, []);
  const below = error ?? hint;
  return (
    <div class={`field ${wide ? 'wide' : ''}`}>
      <label for={id}>{label}</label>
      <input
        id={id}
        ref={field}
        name={name}
        value={value}
        autocomplete="off"
        aria-invalid={error !== undefined}
        aria-describedby={below ? `${id}-below` : undefined}
        onInput={(event) => onInput(event.currentTarget.value)}
        onBlur={onBlur}
      />
      {below && (
        <p id={`${id}-below`} class={error ? 'wrong' : 'soft'}>
          {below}
        </p>
      )}
    </div>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [value: string, text: string])[];
  readonly hint?: string | undefined;
  readonly error?: string | undefined;
  readonly name?: string;
  readonly wide?: boolean;
  onChoose(value: string): void;
}

/** One of a few. */
export function Choice({ label, value, options, hint, error, name, wide, onChoose }: ChoiceProps) {
  const id = useId();
  const below = error ?? hint;
  return (
    <div class={`field choice ${wide ? 'wide' : ''}`}>
      <label for={id}>{label}</label>
      <select
        id={id}
        name={name}
        value={value}
        aria-invalid={error !== undefined}
        aria-describedby={below ? `${id}-below` : undefined}
        onChange={(event) => onChoose(event.currentTarget.value)}
      >
        {options.map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
      {below && (
        <p id={`${id}-below`} class={error ? 'wrong' : 'soft'}>
          {below}
        </p>
      )}
    </div>
  );
}
