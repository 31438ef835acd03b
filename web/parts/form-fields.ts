import type { FormField, SetupForm } from '../state/setup-form.ts';

/** Each group of fields: the form, what is wrong in fields that were touched, and how to change it. */
export interface FieldsProps {
  readonly form: SetupForm;
  wrong(field: FormField): string | undefined;
  set(field: FormField): (value: string) => void;
  left(field: FormField): () => void;
}
