import { type Setup, setupSchema } from '../../shared/session/setup.ts';
import { readNumber } from '../words/numbers.ts';

/** The set-up as it is filled in: text as typed, lengths in the unit that was chosen. */
export const emptyForm = {
  part: '',
  surface: 'front way',
  round: 'as found',
  lengthUnit: 'mm',
  length: '',
  startEnd: 'headstock end',
  farEnd: 'tail end',
  limit: '',
  source: 'cable',
  name: 'level',
  port: '',
  profile: '',
  unit: 'um/m',
  graduation: '0.02',
  sigma: '',
  base: '150',
  stations: '',
  faces: 'far',
  back: 'same',
  handsFree: 'yes',
  operator: '',
  support: '',
  partC: '',
  airC: '',
};
export type SetupForm = typeof emptyForm;
export type FormField = keyof SetupForm;

/** The invented machine of the demo. */
export const demoForm: SetupForm = {
  ...emptyForm,
  part: 'Gap-bed lathe, bed 03',
  length: '1800',
  limit: '10',
  name: 'level L2',
  port: 'simulated',
  profile: 'line-decimal',
  stations: '13',
  operator: 'visitor',
  support: '3 feet, carriage at the tail',
  partC: '19.6',
  airC: '20.1',
};

/** What would be right in each field that can be wrong. */
const right: Partial<Record<FormField, string>> = {
  part: 'Say which machine or part it is.',
  surface: 'Say which way is walked.',
  length: 'A length, above 0 and up to 100 m.',
  base: 'The distance between the feet, above 0 and up to 10 m.',
  stations: 'A whole number from 2 to 1,000.',
  startEnd: 'Give this end a name.',
  farEnd: 'Give this end a name.',
  name: 'Give the level a name.',
  port: 'Choose the port that the level hangs on.',
  profile: 'Choose how the level talks.',
  graduation: 'A number above 0.',
  sigma: 'A number above 0, or nothing.',
  limit: 'A number of µm above 0, or nothing.',
  partC: 'Between −50 and 100, or nothing.',
  airC: 'Between −50 and 100, or nothing.',
};

const fieldOf: Record<string, FormField> = {
  lengthMm: 'length',
  baseMm: 'base',
  limit: 'limit',
  'instrument.name': 'name',
  'instrument.port': 'port',
  'instrument.profile': 'profile',
  'instrument.unit': 'unit',
  'instrument.graduation': 'graduation',
  'instrument.sigma': 'sigma',
};

export interface ReadForm {
  readonly setup: Setup | null;
  readonly errors: Readonly<Partial<Record<FormField, string>>>;
}

/** The set-up that a form says, or what is wrong beside each field. */
export function readForm(form: SetupForm): ReadForm {
  const errors: Partial<Record<FormField, string>> = {};
  const parsed = setupSchema.safeParse(setupOf(form));
  for (const issue of parsed.error?.issues ?? []) {
    const path = issue.path.join('.');
    const field = fieldOf[path] ?? (path as FormField);
    errors[field] = right[field] ?? issue.message;
  }
  if (form.source === 'cable') {
    if (!form.port) errors.port = right.port ?? '';
    if (!form.profile) errors.profile = right.profile ?? '';
  }
  const sound = parsed.success && Object.keys(errors).length === 0;
  return { setup: sound ? parsed.data : null, errors };
}

function setupOf(form: SetupForm): unknown {
  const mm = form.lengthUnit === 'in' ? 25.4 : 1;
  const cable = form.source === 'cable';
  const setup: Record<string, unknown> = {
    kind: 'way',
    part: form.part,
    surface: form.surface,
    round: form.round,
    prefix: undefined,
    lengthMm: scaled(form.length, mm),
    baseMm: scaled(form.base, mm),
    stations: numberOrNothing(form.stations),
    startEnd: form.startEnd,
    farEnd: form.farEnd,
    faces: form.faces,
    back: form.back,
    handsFree: cable && form.handsFree === 'yes',
    instrument: {
      name: form.name,
      source: form.source,
      unit: form.unit,
      sigma: numberOrNothing(form.sigma),
      ...(cable
        ? { port: form.port, profile: form.profile }
        : { graduation: numberOrNothing(form.graduation) }),
    },
    limit: numberOrNothing(form.limit),
    operator: form.operator,
    support: form.support,
    partC: numberOrNothing(form.partC),
    airC: numberOrNothing(form.airC),
    lengthUnit: form.lengthUnit,
  };
  return Object.fromEntries(Object.entries(setup).filter(([, value]) => value !== undefined));
}

/** Nothing stays nothing; what is no number becomes text that no schema takes. */
function numberOrNothing(text: string): number | string | undefined {
  return text.trim() === '' ? undefined : (readNumber(text) ?? text);
}

function scaled(text: string, factor: number): number | string | undefined {
  const value = numberOrNothing(text);
  return typeof value === 'number' ? value * factor : value;
}

/** Stations for whole steps along the length, one more than the steps; empty while it can't be told. */
export function stationsFor(length: string, base: string): string {
  const [whole, step] = [readNumber(length), readNumber(base)];
  if (!whole || !step || whole <= 0 || step <= 0) return '';
  const steps = Math.floor(whole / step + 1e-6);
  return steps >= 1 && steps < 1000 ? String(steps + 1) : '';
}

/** Whether steps × spacing covers the length, in words. */
export function coverage(form: SetupForm): string | undefined {
  const [length, base, stations] = [
    readNumber(form.length),
    readNumber(form.base),
    readNumber(form.stations),
  ];
  if (!length || !base || !stations || stations < 2) return undefined;
  const covered = (stations - 1) * base;
  const figure = (value: number) => value.toLocaleString('en', { maximumFractionDigits: 2 });
  const steps = `${stations - 1} steps of ${figure(base)} are ${figure(covered)} ${form.lengthUnit}`;
  const left = length - covered;
  if (Math.abs(left) < 1e-6 * length) return `${steps}: the whole way.`;
  if (left < 0) return `${steps}: ${figure(-left)} more than the way is long.`;
  return `${steps}: ${figure(left)} of the way stay unread, drawn half at each end.`;
}
