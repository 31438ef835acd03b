import { demoSetups } from '../../shared/session/demo-setups.ts';
import { recall, remember } from '../state/preferences.ts';
import type { Kind } from '../words/kinds.ts';
import { number } from '../words/quantity.ts';
import { written } from '../words/reader.ts';
import { emptyFormOf, type SetupForm } from './fields.ts';
import { formOf } from './setup-form.ts';

/** What goes along when another kind is chosen: who measures which machine, and where. */
const carried = [
  'part',
  'round',
  'operator',
  'support',
  'partC',
  'airC',
  'bolts',
  'carriage',
  'mounted',
  'standing',
  'gloves',
  'lengthUnit',
] as const;

/** The form to begin with: as it was filled in last, or the demo's. */
export function lastForm(demo: boolean): SetupForm {
  const kind = demo ? 'way' : (recall().kind ?? 'way');
  return firstForm(kind, demo, null);
}

/** The form of a kind: the demo's, as it was last filled in, or empty but for what goes along from `now`. */
export function firstForm(kind: Kind, demo: boolean, now: SetupForm | null): SetupForm {
  if (demo) return typedForReader(formOf(demoSetups[kind]), []);
  const kept = recall().forms?.[kind];
  const along = now
    ? Object.fromEntries(carried.flatMap((field) => (now[field] ? [[field, now[field]]] : [])))
    : {};
  return { ...typedForReader(emptyFormOf(kind), named), ...kept, ...along, kind };
}

/** What somebody names in own words, and may have named in another language. */
const named = ['round', 'surface', 'startEnd', 'farEnd', 'name'] as const;

/** A form as its reader would have typed it: names in the reader's language, numbers with the reader's decimal sign. */
function typedForReader(form: SetupForm, names: readonly (typeof named)[number][]): SetupForm {
  const numbers = Object.entries(form).flatMap(([field, value]) =>
    /^\d+\.\d+$/.test(value) ? [[field, number(Number(value), value.split('.')[1]!.length)]] : [],
  );
  const words = names.map((field) => [field, written(form[field])]);
  return { ...form, ...Object.fromEntries([...numbers, ...words]) };
}

/** Keeps a form for the next survey of its kind. */
export function keepForm(form: SetupForm): void {
  const { kind, ...fields } = form;
  remember({ kind, forms: { ...recall().forms, [kind]: fields } });
}
