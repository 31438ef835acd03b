import { Choice } from '../parts/field.tsx';
import { kindWords } from '../words/kinds.ts';
import { say } from '../words/say.ts';
import type { FieldsProps } from './entries.tsx';
import type { SetupForm } from './fields.ts';
import type { Plugged } from './plugged.ts';

/** More instruments that were proved: they listen along, and a level among them may stay put. */
export function AlongFields({ plugged, form, set }: FieldsProps & { plugged: Plugged }) {
  const others = (plugged.known ?? []).filter(
    ({ proved: { proving } }) => proving.source === 'cable' && proving.name !== form.name,
  );
  if (others.length === 0 || form.source !== 'cable') return null;
  const along = form.along.split('\n').filter((name) => name !== '');
  const toggle = (name: string) =>
    set('along')((along.includes(name) ? along.filter((one) => one !== name) : [...along, name]).join('\n'));
  const levels = others.filter(({ proved }) => proved.proving.reads === 'tilt');
  const still = kindWords[form.kind].reads === 'tilt' && levels.length > 0;
  return (
    <fieldset data-testid="along">
      <legend>{say('Others that listen along')}</legend>
      <div class="fields run">
        {still && (
          <Choice
            label={say('Level that stays put')}
            name="reference"
            value={form.reference}
            options={[
              ['', say('none')],
              ...levels.map(({ proved: { proving } }) => [proving.name, proving.name] as const),
            ]}
            onChoose={set('reference')}
          />
        )}
        {still && form.reference !== '' && (
          <Choice
            label={say('Its plus end points to')}
            name="referenceFaces"
            value={form.referenceFaces}
            options={directions(form)}
            onChoose={set('referenceFaces')}
          />
        )}
        {others
          .filter(({ proved }) => proved.proving.name !== form.reference)
          .map(({ proved: { proving }, is }) => (
            <label key={proving.name} class="tick">
              <input
                type="checkbox"
                checked={along.includes(proving.name)}
                onChange={() => toggle(proving.name)}
              />
              {is === 'absent' ? say('{name}, not plugged in', { name: proving.name }) : proving.name}
            </label>
          ))}
      </div>
      {still && form.reference !== '' && (
        <p class="soft">
          {say(
            'It stands on the part and is not touched. How far it goes is taken off every reading along it, at the same moments; both are kept as they read.',
          )}
        </p>
      )}
    </fieldset>
  );
}

function directions({ kind, startEnd, farEnd }: SetupForm): (readonly [string, string])[] {
  if (kind === 'plate') {
    return [
      ['far', say('the right')],
      ['start', say('the left')],
      ['rear', say('the back')],
      ['front', say('the front')],
    ];
  }
  const ends = [
    ['far', farEnd || say('the far end')],
    ['start', startEnd || say('the start end')],
  ] as const;
  if (kind !== 'bed') return [...ends];
  return [...ends, ['rear', say('the rear way')], ['front', say('the front way')]];
}
