import { useCallback, useEffect, useState } from 'preact/hooks';
import type { PortList } from '../../shared/api.ts';
import { tiltUnits } from '../../shared/units.ts';
import { askPorts } from '../state/api.ts';
import { unitWord } from '../words/live.ts';
import { Choice, Field } from './field.tsx';
import type { FieldsProps } from './form-fields.ts';

const units = tiltUnits.map((unit) => [unit, unitWord(unit)] as const);

/** The level: on a cable, or read by eye and typed. */
export function LevelFields(fields: FieldsProps) {
  const { form, wrong, set, left } = fields;
  return (
    <fieldset>
      <legend>The level</legend>
      <div class="fields two">
        <Choice
          label="Its readings come"
          name="source"
          value={form.source}
          options={[
            ['cable', 'over a cable'],
            ['typed', 'from my eye, typed'],
          ]}
          onChoose={(source) => {
            set('source')(source);
            set('unit')(source === 'typed' ? 'mm/m' : 'um/m');
            set('sigma')(source === 'typed' ? '0.2' : '');
          }}
        />
        <Field
          label="Called"
          name="name"
          value={form.name}
          error={wrong('name')}
          onInput={set('name')}
          onBlur={left('name')}
        />
        {form.source === 'cable' ? <Cable {...fields} /> : <Typed {...fields} />}
        <Choice
          label="Its plus end points to"
          name="faces"
          value={form.faces}
          options={[
            ['far', form.farEnd || 'the far end'],
            ['start', form.startEnd || 'the start end'],
          ]}
          onChoose={set('faces')}
        />
        <Field
          label={
            form.source === 'typed'
              ? 'One reading is good to, graduations'
              : 'Spread of one reading, if proved'
          }
          name="sigma"
          value={form.sigma}
          error={wrong('sigma')}
          onInput={set('sigma')}
          onBlur={left('sigma')}
        />
        <p class="soft beside">
          Plus says that the foot at that end stands higher. Try it: put a feeler under one foot.
        </p>
      </div>
    </fieldset>
  );
}

function Typed({ form, wrong, set, left }: FieldsProps) {
  return (
    <>
      <Field
        label="One graduation is"
        name="graduation"
        value={form.graduation}
        error={wrong('graduation')}
        hint="1 if you read the unit itself"
        onInput={set('graduation')}
        onBlur={left('graduation')}
      />
      <Choice label="Its unit" name="unit" value={form.unit} options={units} onChoose={set('unit')} />
    </>
  );
}

function Cable({ form, wrong, set }: FieldsProps) {
  const [list, setList] = useState<PortList | null>(null);
  const look = useCallback(() => void askPorts().then(setList), []);
  useEffect(look, [look]);
  const ports = list?.ports ?? [];
  const known = ports.some(({ path }) => path === form.port) || form.port === '';
  const chooseProfile = (id: string) => {
    set('profile')(id);
    const unit = list?.profiles.find((profile) => profile.id === id)?.unit;
    if (unit) set('unit')(unit);
  };
  return (
    <>
      <div class="field wide with-button">
        <Choice
          label="Port"
          name="port"
          value={form.port}
          error={wrong('port')}
          options={[
            ['', ports.length > 0 ? 'choose…' : 'no port found: plug it in, then look again'],
            ...ports.map(
              ({ path, label }) => [path, label.includes(path) ? label : `${label} (${path})`] as const,
            ),
            ...(known ? [] : [[form.port, `${form.port}, not there now`] as const]),
          ]}
          onChoose={set('port')}
        />
        <button type="button" class="small" onClick={look}>
          Look again
        </button>
      </div>
      <Choice
        label="How it talks"
        name="profile"
        wide
        value={form.profile}
        error={wrong('profile')}
        options={[['', 'choose…'], ...(list?.profiles ?? []).map(({ id, title }) => [id, title] as const)]}
        onChoose={chooseProfile}
      />
      <Choice label="Its numbers are" name="unit" value={form.unit} options={units} onChoose={set('unit')} />
    </>
  );
}
