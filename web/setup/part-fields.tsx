import { Triangle } from '../parts/notice-line.tsx';
import { kindWords } from '../words/kinds.ts';
import { coverage } from './coverage.ts';
import { Entries, type FieldsProps } from './entries.tsx';
import { partEntries } from './layout.ts';

/** The part: what it is, how long, what its ends are called. */
export function PartFields(fields: FieldsProps) {
  const { form } = fields;
  const { about, size, ends } = partEntries(form);
  const covered = coverage(form);
  return (
    <fieldset>
      <legend>{`The ${kindWords[form.kind].name.toLowerCase()}`}</legend>
      <div class="fields">
        <Entries {...fields} entries={about} />
        <Entries {...fields} entries={size} />
        <p
          class={`wide-note ${covered?.warns ? 'notice warns' : 'soft'}`}
          data-testid="coverage"
          data-warns={covered?.warns ?? false}
          aria-live="polite"
        >
          {covered?.warns && <Triangle />}
          <span>{covered?.text ?? 'What the stations cover is said here.'}</span>
        </p>
        <Entries {...fields} entries={ends} />
      </div>
    </fieldset>
  );
}
