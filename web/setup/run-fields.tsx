import { kindWords } from '../words/kinds.ts';
import { Entries, type FieldsProps } from './entries.tsx';
import { conditionEntries, runEntries } from './layout.ts';

/** How it is walked or swept, and under what conditions. */
export function RunFields(fields: FieldsProps) {
  const tilt = kindWords[fields.form.kind].reads === 'tilt';
  return (
    <fieldset>
      <legend>{tilt ? 'The walk' : 'The sweep'}</legend>
      <div class="fields run">
        <Entries {...fields} entries={[...runEntries(fields.form), ...conditionEntries]} />
      </div>
    </fieldset>
  );
}
