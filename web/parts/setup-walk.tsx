import { Choice, Field } from './field.tsx';
import type { FieldsProps } from './form-fields.ts';

/** How it is walked, and under what conditions. */
export function WalkFields({ form, wrong, set, left }: FieldsProps) {
  const field = (name: keyof typeof form) => ({
    name,
    value: form[name],
    error: wrong(name),
    onInput: set(name),
    onBlur: left(name),
  });
  return (
    <fieldset>
      <legend>The walk</legend>
      <div class="fields six">
        <Choice
          label="Walk back"
          name="back"
          value={form.back}
          options={[
            ['same', 'yes, same way round'],
            ['turned', 'yes, level turned round'],
            ['no', 'no, nothing is checked'],
          ]}
          onChoose={set('back')}
        />
        <Choice
          label="Hands-free"
          name="handsFree"
          value={form.source === 'cable' ? form.handsFree : 'no'}
          options={[
            ['yes', 'takes when still'],
            ['no', 'I press Take'],
          ]}
          onChoose={set('handsFree')}
        />
        <Field label="By" {...field('operator')} />
        <Field label="Support" {...field('support')} />
        <Field label="Iron, °C" {...field('partC')} />
        <Field label="Air, °C" {...field('airC')} />
      </div>
    </fieldset>
  );
}
