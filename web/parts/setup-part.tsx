import { coverage } from '../state/setup-form.ts';
import { Choice, Field } from './field.tsx';
import type { FieldsProps } from './form-fields.ts';

/** The part: what it is, how long, what its ends are called. */
export function PartFields({ form, wrong, set, left }: FieldsProps) {
  const field = (name: keyof typeof form) => ({
    name,
    value: form[name],
    error: wrong(name),
    onInput: set(name),
    onBlur: left(name),
  });
  const unit = form.lengthUnit === 'in' ? 'inch' : 'mm';
  return (
    <fieldset>
      <legend>The way</legend>
      <div class="fields">
        <Field label="Machine or part" wide focus {...field('part')} />
        <Field label="Round" {...field('round')} />
        <Field label="Way that is walked" wide {...field('surface')} />
        <Field label="Limit, µm, if agreed" {...field('limit')} />
        <Field label={`Length of the way, ${unit}`} {...field('length')} />
        <Field label={`Foot spacing, ${unit}`} {...field('base')} />
        <Field label="Stations (steps + 1)" {...field('stations')} />
        <p class="soft wide-note" data-testid="coverage" aria-live="polite">
          {coverage(form) ?? 'Stations are counted from length and foot spacing.'}
        </p>
        <Field label="End at your left" {...field('startEnd')} />
        <Field label="End at your right" {...field('farEnd')} />
        <Choice
          label="Lengths in"
          name="lengthUnit"
          value={form.lengthUnit}
          options={[
            ['mm', 'mm'],
            ['in', 'inch'],
          ]}
          onChoose={set('lengthUnit')}
        />
      </div>
    </fieldset>
  );
}
