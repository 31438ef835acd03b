import { kindWords } from '../words/kinds.ts';
import { say } from '../words/say.ts';
import { Entries, type FieldsProps } from './entries.tsx';
import { conditionEntries, moreConditions, runEntries } from './layout.ts';

/** How it is walked or swept, and under what conditions. */
export function RunFields(fields: FieldsProps) {
  const tilt = kindWords[fields.form.kind].reads === 'tilt';
  return (
    <fieldset>
      <legend>{tilt ? 'The walk' : 'The sweep'}</legend>
      <div class="fields run">
        <Entries {...fields} entries={[...runEntries(fields.form), ...conditionEntries]} />
      </div>
      <details class="more-conditions">
        <summary>{say('More conditions: bolts, carriage, what is mounted, gloves, heat')}</summary>
        <div class="fields run">
          <Entries {...fields} entries={moreConditions(fields.form)} />
        </div>
      </details>
    </fieldset>
  );
}
