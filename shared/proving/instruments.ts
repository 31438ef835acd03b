import { z } from 'zod';
import { WayscribeError } from '../errors.ts';
import type { InstrumentSetup } from '../session/setup.ts';
import { progressOf } from './progress.ts';
import { type Proving, provingSchema } from './proving.ts';
import { quantityWords } from './quantity-words.ts';
import { signOf, signWords } from './sign.ts';
import { sigmaOf, twoDigits } from './spread.ts';
import { unitWords } from './unit-words.ts';
import { zeroOf } from './zero.ts';

/** What is remembered of instruments: provings in the order in which they were kept. None is ever taken away. */

const provedSchema = z.strictObject({
  t: z.number().describe('when it was proved, ms since 1970'),
  day: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/)
    .describe('the same as a date of the place'),
  sign: z
    .union([z.literal(1), z.literal(-1)])
    .describe('1: plus means that the far foot, or the metal under the tip, stands HIGH'),
  zero: z.number().optional().describe('what a level reads on level ground, as it reads'),
  sigma: z.number().positive().describe('standard deviation of one reading, as it reads'),
  proving: provingSchema.describe('what was said and read: all above is derived from it'),
});
export type ProvedInstrument = z.infer<typeof provedSchema>;

export const instrumentsFileSchema = z.strictObject({
  instruments: z.literal(1).describe('version of this form'),
  proved: z.array(provedSchema),
});
export type InstrumentsFile = z.infer<typeof instrumentsFileSchema>;
export const provedInstrumentSchema = provedSchema;

/**
 * What a proving has proved.
 * @throws WayscribeError `command.refused` when a step is missing or not good
 */
export function provedOf(proving: Proving, t: number, day: string): ProvedInstrument {
  const { step, verdicts } = progressOf(proving);
  const [sign, sigma, zero] = [signOf(proving), sigmaOf(proving), zeroOf(proving)];
  if (step !== null || sign === null || sigma === null) {
    const last = verdicts.at(-1);
    throw new WayscribeError(
      'command.refused',
      proving.name,
      last && last.is !== 'good' ? last.sentence : `the step "${step}" is not done yet`,
      last?.remedy ?? 'do every step',
    );
  }
  return { t, day, sign, ...(zero && { zero: zero.value }), sigma: sigma.value, proving };
}

/** The last proving of each instrument, by name, the newest first. */
export function current(proved: readonly ProvedInstrument[]): ProvedInstrument[] {
  const byName = new Map(proved.map((one) => [one.proving.name, one]));
  return [...byName.values()].sort((a, b) => b.t - a.t);
}

/** What the set-up of a survey takes over. */
export function instrumentSetupOf({ sigma, day, proving }: ProvedInstrument): InstrumentSetup {
  const { name, source, port, profile, channel, serial, unit, graduation, by } = proving;
  return {
    name,
    source,
    ...(port !== undefined && { port }),
    ...(profile !== undefined && { profile }),
    ...(channel !== undefined && { channel }),
    ...(serial && { serial }),
    unit,
    graduation,
    sigma,
    provedOn: by ? `${day} by ${by}` : day,
  };
}

/**
 * A set-up with what was proved of its instrument filled in where it was left out: when the last proving of that name
 * is of the same port, profile, channel, unit and graduation. A set-up that says anything else keeps what it says.
 */
export function withProved<S extends { readonly instrument: InstrumentSetup }>(
  setup: S,
  proved: readonly ProvedInstrument[],
): S {
  const { instrument } = setup;
  const known = proved.findLast(({ proving }) => proving.name === instrument.name);
  if (!known || instrument.provedOn !== undefined) return setup;
  const facts = instrumentSetupOf(known);
  // On a cable one count is one of the unit unless it was proved to be something else.
  const said = Object.entries(instrument).filter(
    ([field, value]) =>
      value !== undefined && !(field === 'graduation' && facts.source === 'cable' && value === 1),
  );
  const same = said.every(
    ([field, value]) =>
      facts[field as keyof InstrumentSetup] === value ||
      // Forms show a spread with two digits.
      (field === 'sigma' && twoDigits(known.sigma) === value),
  );
  return same ? { ...setup, instrument: facts } : setup;
}

/** "Level L2 proved: plus means far foot (cable end) HIGH, 1 count = 1 µm/m, zero 38 µm/m, spread 0.3 µm/m". */
export function provedSentence({ sign, sigma, zero, proving }: ProvedInstrument): string {
  const { reads, source, unit, graduation, name } = proving;
  const facts = [
    signWords(proving, sign),
    `1 ${source === 'typed' ? 'graduation' : 'count'} = ${graduation} ${unitWords(unit)}`,
    ...(zero === undefined ? [] : [`zero ${quantityWords(proving, zero, sigma)}`]),
    `spread ${quantityWords(proving, sigma, sigma)}`,
  ];
  return `${reads === 'tilt' ? 'Level' : 'Indicator'} ${name} proved: ${facts.join(', ')}`;
}
