import { Choice, Field } from '../parts/field.tsx';
import type { FormField, SetupForm } from './fields.ts';
import type { Entry } from './layout.ts';

/** Each group of fields: the form, what is wrong in fields that were touched, and how to change it. */
export interface FieldsProps {
  readonly form: SetupForm;
  wrong(field: FormField): string | undefined;
  set(field: FormField): (value: string) => void;
  left(field: FormField): () => void;
}

interface EntriesProps extends FieldsProps {
  readonly entries: readonly Entry[];
}

export function Entries({ entries, form, wrong, set, left }: EntriesProps) {
  return (
    <>
      {entries.map(({ field, label, options, wide = false }) => {
        const common = { label, wide, name: field, value: form[field], error: wrong(field) };
        return options ? (
          <Choice key={field} {...common} options={options} onChoose={set(field)} />
        ) : (
          <Field key={field} {...common} onInput={set(field)} onBlur={left(field)} />
        );
      })}
    </>
  );
}
