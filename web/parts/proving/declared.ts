import type { BenchStream } from '../../../shared/messages.ts';
import { unprovable } from '../../../shared/proving/provable.ts';
import { measuredIn, type Proving, provingSchema } from '../../../shared/proving/proving.ts';
import { toInternal } from '../../../shared/units.ts';
import { readNumber } from '../../words/numbers.ts';
import { shortNumber } from '../../words/quantity.ts';
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

/**
 * The proving that a form begins, or what is wrong beside each field. `doubt`: by what was said of unit and graduation
 * its step can prove nothing, which is to be asked back; where the unit is a slip, the step itself shows it.
 */
export function readDeclared(
  form: Declared,
  stream: BenchStream | null,
  profile: string | undefined,
): { proving: Proving | null; errors: Partial<Record<DeclaredField, string>>; doubt: string | null } {
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
  if (!parsed.success) return { proving: null, errors, doubt: null };
  return { proving: parsed.data, errors, doubt: stepDoubt(parsed.data, stream, form.lengthUnit) };
}

/** A stream is as noisy as this share of the largest spread that it was seen to have at rest. */
const ofQuiet = 1 / 4;

/** Why a step can prove nothing, and which one would do. */
function stepDoubt(proving: Proving, stream: BenchStream | null, unit: string): string | null {
  const seen = stream?.unitOpen ? { noise: ofQuiet * stream.quiet } : {};
  const trouble = unprovable(proving, { ...seen, range: stream?.range });
  if (!trouble) return null;
  const size = (um: number, round: (value: number) => number) => {
    const [decimals, length] = unit === 'in' ? [3, um / 25_400] : [2, um / 1000];
    const rounded = round(length * 10 ** decimals) / 10 ** decimals;
    return `${shortNumber(rounded, decimals)} ${unit === 'in' ? say('inch') : 'mm'}`;
  };
  if (trouble.is === 'too-large') {
    return say('It reads no further: take a step of {most} or less.', {
      most: size(trouble.mostUm, Math.floor),
    });
  }
  const { feelerUm, blockUm } = trouble;
  if (blockUm === null) {
    return say('No step can prove it: its reading is too coarse, or its feet stand too near.');
  }
  const block = size(blockUm, Math.ceil);
  if (feelerUm === null)
    return say('Too small to tell the scale: take gauge blocks of {block} or more.', { block });
  return say(
    'Too small to tell the scale: take a feeler of {feeler} or more, or gauge blocks of {block} or more.',
    {
      feeler: size(feelerUm, Math.ceil),
      block,
    },
  );
}

/** A typed length, in so many µm or mm: `per` units of it go into one mm. */
function inUnit(text: string, unit: string, per: number): number | undefined {
  const value = readNumber(text);
  return value === null ? undefined : per * toInternal('length', value, unit);
}
