import type { BenchStream } from '../../../shared/messages.ts';
import { measuredIn, type Proving, provingSchema } from '../../../shared/proving/proving.ts';
import { toInternal } from '../../../shared/units.ts';
import { readNumber } from '../../words/numbers.ts';
import { say, text } from '../../words/say.ts';

/** What the person says of the instrument, text as typed. */
export const emptyDeclared = {
  name: '',
  serial: '',
  reads: 'tilt',
  unit: '',
  graduation: '1',
  lengthUnit: 'mm',
  base: '',
  far: 'cable end',
  step: '',
  stepIs: 'feeler',
  by: '',
};
export type Declared = typeof emptyDeclared;
export type DeclaredField = keyof Declared;

/** The eye tells about a fifth of a graduation (common practice, no source). */
const eyeTells = 0.2;

/** What would be right in each field that can be wrong. */
const right: Partial<Record<DeclaredField, string>> = {
  name: text('Give it a name.'),
  unit: text('Choose its unit.'),
  graduation: text('A number above 0.'),
  base: text('The distance between its feet, above 0.'),
  far: text('Name the end.'),
  step: text('A size above 0.'),
};

const fieldOf: Readonly<Record<string, DeclaredField>> = { baseMm: 'base', stepUm: 'step' };

/** The form for a stream, or for an instrument that is read by eye. */
export function declaredFor(stream: BenchStream | null, by: string): Declared {
  if (!stream)
    return { ...emptyDeclared, name: 'L1', unit: 'mm/m', graduation: '0.02', far: 'marked end', by };
  const name = stream.reads === 'tilt' ? 'L1' : 'I1';
  return { ...emptyDeclared, name, reads: stream.reads, unit: stream.unit, by };
}

/** The proving that a form begins, or what is wrong beside each field. */
export function readDeclared(
  form: Declared,
  stream: BenchStream | null,
  profile: string | undefined,
): { proving: Proving | null; errors: Partial<Record<DeclaredField, string>> } {
  const tilt = form.reads === 'tilt';
  const graduation = readNumber(form.graduation);
  const parsed = provingSchema.safeParse({
    name: form.name,
    reads: form.reads,
    source: stream ? 'cable' : 'typed',
    ...(stream && { port: stream.port, profile, channel: stream.channel }),
    ...(form.serial.trim() && { serial: form.serial }),
    unit: form.unit,
    unitOpen: stream?.unitOpen ?? true,
    graduation,
    resolution: stream ? stream.resolution : eyeTells,
    far: form.far,
    ...(tilt && { baseMm: inUnit(form.base, form.lengthUnit, 1) }),
    stepUm: inUnit(form.step, form.lengthUnit, 1000),
    stepIs: form.stepIs,
    by: form.by,
    takes: [],
  });
  const errors: Partial<Record<DeclaredField, string>> = {};
  for (const { path, message } of parsed.error?.issues ?? []) {
    const key = String(path[0]);
    const field = fieldOf[key] ?? (key as DeclaredField);
    errors[field] = right[field] === undefined ? message : say(right[field]);
  }
  if (!measuredIn(tilt ? 'tilt' : 'height').includes(form.unit)) errors.unit = say(right.unit!);
  return { proving: parsed.success ? parsed.data : null, errors };
}

/** A typed length, in so many µm or mm: `per` units of it go into one mm. */
function inUnit(text: string, unit: string, per: number): number | undefined {
  const value = readNumber(text);
  return value === null ? undefined : per * toInternal('length', value, unit);
}
