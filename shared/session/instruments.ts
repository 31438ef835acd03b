import { WayscribeError } from '../errors.ts';
import { type TiltUnit, tiltUnits } from '../units.ts';
import type { InstrumentSetup, Setup } from './setup.ts';

/** The instruments of a survey: the one that is moved, and those that only listen along. */

/** All of them, the one that is moved first. */
export function instrumentsOf({ instrument, others = [] }: Setup): readonly InstrumentSetup[] {
  return [instrument, ...others];
}

/** The level that stays put, and where its plus end points; null when there is none. */
export function referenceOf(
  setup: Setup,
): { readonly level: InstrumentSetup; readonly faces: NonNullable<Setup['reference']>['faces'] } | null {
  const { reference, others = [] } = setup;
  const level = others.find(({ name }) => name === reference?.name);
  return reference && level ? { level, faces: reference.faces } : null;
}

/** Whether anything of the result hangs on what this instrument says. */
export function isUsed({ instrument, reference }: Setup, name: string): boolean {
  return name === instrument.name || name === reference?.name;
}

/**
 * Whether the instruments of a set-up can work side by side.
 * @throws WayscribeError `command.invalid` with the field and what would be right
 */
export function checkInstruments(setup: Setup): void {
  const { instrument, others = [], reference } = setup;
  const all = instrumentsOf(setup);
  all.forEach(({ name, port, source }, k) => {
    const place = k === 0 ? 'instrument' : `others.${k - 1}`;
    if (all.findIndex((one) => one.name === name) !== k) {
      throw invalid(`${place}.name`, `two instruments are called ${name}`, 'give each a name of its own');
    }
    if (k > 0 && source !== 'cable') {
      throw invalid(`${place}.source`, 'only an instrument on a cable can listen along', 'give it a port');
    }
    if (port !== undefined && all.findIndex((one) => one.port === port) !== k) {
      throw invalid(`${place}.port`, 'another instrument hangs on that port', 'choose the port of this one');
    }
  });
  if (!reference) return;
  const level = others.find(({ name }) => name === reference.name);
  if (!level) {
    throw invalid('reference', `no instrument is called ${reference.name}`, 'name one of the others');
  }
  if (instrument.source !== 'cable' || !isTilt(instrument) || !isTilt(level)) {
    throw invalid(
      'reference',
      'only a level on a cable can be held against a level that stays put',
      'leave the reference level out',
    );
  }
}

function isTilt(instrument: InstrumentSetup): instrument is InstrumentSetup & { unit: TiltUnit } {
  return (tiltUnits as readonly string[]).includes(instrument.unit);
}

function invalid(place: string, message: string, remedy: string): WayscribeError {
  return new WayscribeError('command.invalid', place, message, remedy);
}
