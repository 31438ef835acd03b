import { instrumentSetupOf, type ProvedInstrument } from '../../shared/proving/instruments.ts';
import { type Setup, type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { kindWords } from '../words/kinds.ts';
import { readNumber } from '../words/numbers.ts';
import { say } from '../words/say.ts';
import {
  commonMappings,
  emptyFormOf,
  type FormField,
  kindMappings,
  type Mapping,
  right,
  type SetupForm,
} from './fields.ts';

/** Value of the port's field that says that its path is typed. */
export const anotherPort = 'another';

export interface ReadForm {
  readonly setup: Setup | null;
  readonly errors: Readonly<Partial<Record<FormField, string>>>;
}

/**
 * The set-up that a form says, or what is wrong beside each field.
 * @param proved what was proved: instruments that listen along are taken from there by their names
 */
export function readForm(form: SetupForm, proved: readonly ProvedInstrument[] = []): ReadForm {
  const errors: Partial<Record<FormField, string>> = {};
  const put = (field: FormField, text = '') => {
    errors[field] = right[field] ?? text;
  };
  const parsed = setupSchema.safeParse(setupOf(form, proved));
  for (const issue of parsed.error?.issues ?? []) {
    const field = fieldOf(form, issue.path.join('.'));
    if (issue.code === 'too_big' && issue.origin === 'string') errors[field] = tooLong(Number(issue.maximum));
    else put(field, issue.message);
  }
  if (form.source === 'cable') {
    if (!form.port) put('port');
    if (form.port === anotherPort && !form.portPath.trim()) put('portPath');
    if (!form.profile) put('profile');
  }
  if ((form.kind === 'plate' || form.kind === 'repeat') && leavesNothing(form)) put('border');
  const sound = parsed.success && Object.keys(errors).length === 0;
  return { setup: sound ? parsed.data : null, errors };
}

function tooLong(count: number): string {
  return say('Shorten it to {count} letters at most.', { count });
}

const instrumentFields: Record<string, FormField> = {
  'instrument.name': 'name',
  'instrument.port': 'port',
  'instrument.profile': 'profile',
  'instrument.unit': 'unit',
  'instrument.graduation': 'graduation',
  'instrument.sigma': 'sigma',
};

function fieldOf({ kind }: SetupForm, path: string): FormField {
  const mapped = mappingsOf(kind).find(([key]) => key === path)?.[1];
  return mapped ?? instrumentFields[path] ?? (path as FormField);
}

function mappingsOf(kind: SetupForm['kind']): readonly Mapping[] {
  return [...commonMappings, ...kindMappings[kind]];
}

function setupOf(form: SetupForm, proved: readonly ProvedInstrument[]): unknown {
  const mm = form.lengthUnit === 'in' ? 25.4 : 1;
  const cable = form.source === 'cable';
  const values = mappingsOf(form.kind).map(([key, field, reads]) => {
    if (reads === 'text') return [key, form[field]];
    if (reads === 'if said') return [key, form[field].trim() || undefined];
    return [key, reads === 'length' ? scaled(form[field], mm) : numberOrNothing(form[field])];
  });
  return {
    kind: form.kind,
    ...present(values),
    handsFree: cable && form.handsFree === 'yes',
    ...alongOf(form, proved),
    instrument: present([
      ['name', form.name],
      ['source', cable ? 'cable' : 'typed'],
      ['keyed', form.source === 'keyed' ? true : undefined],
      ['unit', form.unit],
      ['sigma', numberOrNothing(form.sigma)],
      ['port', cable ? portOf(form) : undefined],
      ['profile', cable ? form.profile : undefined],
      ['graduation', cable ? undefined : numberOrNothing(form.graduation)],
    ]),
  };
}

/** The instruments that listen along, and the one of them that stays put. */
function alongOf(form: SetupForm, proved: readonly ProvedInstrument[]) {
  if (form.source !== 'cable') return {};
  const still = kindWords[form.kind].reads === 'tilt' ? form.reference : '';
  const names = new Set([...form.along.split('\n'), still].filter((name) => name && name !== form.name));
  const others = proved.filter(({ proving }) => proving.source === 'cable' && names.has(proving.name));
  if (others.length === 0) return {};
  const reference = others.some(({ proving }) => proving.name === still && proving.reads === 'tilt');
  return {
    others: others.map(instrumentSetupOf),
    ...(reference && { reference: { name: still, faces: form.referenceFaces } }),
  };
}

function portOf({ port, portPath }: SetupForm): string {
  return port === anotherPort ? portPath.trim() : port;
}

function present(values: readonly unknown[][]): Record<string, unknown> {
  return Object.fromEntries(values.filter(([, value]) => value !== undefined));
}

/** The form that says a set-up: the other way round. */
export function formOf(setup: SetupInput): SetupForm {
  const values = setup as unknown as Record<string, unknown>;
  const mm = setup.lengthUnit === 'in' ? 25.4 : 1;
  const { instrument } = setup;
  const fields = mappingsOf(setup.kind).flatMap(([key, field, reads]) => {
    const value = values[key];
    if (value === undefined) return [];
    return [[field, String(reads === 'length' && typeof value === 'number' ? value / mm : value)]];
  });
  return {
    ...emptyFormOf(setup.kind),
    ...Object.fromEntries(fields),
    handsFree: setup.handsFree === false ? 'no' : 'yes',
    name: instrument.name,
    source: instrument.keyed ? 'keyed' : instrument.source,
    unit: instrument.unit,
    port: instrument.port ?? '',
    profile: instrument.profile ?? '',
    graduation: String(instrument.graduation ?? 1),
    sigma: instrument.sigma === undefined ? '' : String(instrument.sigma),
    along: (setup.others ?? []).map(({ name }) => name).join('\n'),
    reference: setup.reference?.name ?? '',
    referenceFaces: setup.reference?.faces ?? 'far',
  };
}

/** Nothing stays nothing; what is no number becomes text that no schema takes. */
function numberOrNothing(text: string): number | string | undefined {
  return text.trim() === '' ? undefined : (readNumber(text) ?? text);
}

function scaled(text: string, factor: number): number | string | undefined {
  const value = numberOrNothing(text);
  return typeof value === 'number' ? value * factor : value;
}

function leavesNothing({ length, width, border }: SetupForm): boolean {
  const [x, y, edge] = [readNumber(length), readNumber(width), readNumber(border)];
  return x !== null && y !== null && edge !== null && 2 * edge >= Math.min(x, y);
}

/** Stations for whole steps along the length, one more than the steps; empty while it can't be told. */
export function stationsFor(length: string, base: string): string {
  const [whole, step] = [readNumber(length), readNumber(base)];
  if (!whole || !step || whole <= 0 || step <= 0) return '';
  const steps = Math.floor(whole / step + 1e-6);
  return steps >= 1 && steps < 1000 ? String(steps + 1) : '';
}

/** Whether the number of stations follows from length and foot spacing. */
export function countsStations({ kind }: SetupForm): boolean {
  return kind === 'way' || kind === 'bed';
}
