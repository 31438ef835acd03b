import { demoSetups } from '../../shared/session/demo-setups.ts';
import { recall, remember } from '../state/preferences.ts';
import type { Kind } from '../words/kinds.ts';
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
  if (demo) return formOf(demoSetups[kind]);
  const kept = recall().forms?.[kind];
  const along = now
    ? Object.fromEntries(carried.flatMap((field) => (now[field] ? [[field, now[field]]] : [])))
    : {};
  return { ...emptyFormOf(kind), ...kept, ...along, kind };
}

/** Keeps a form for the next survey of its kind. */
export function keepForm(form: SetupForm): void {
  const { kind, ...fields } = form;
  remember({ kind, forms: { ...recall().forms, [kind]: fields } });
}
