import { evenSteps } from '../../shared/survey/plate.ts';
import { readNumber } from '../words/numbers.ts';
import { shortNumber } from '../words/quantity.ts';
import type { SetupForm } from './fields.ts';

/** Whether the stations cover what is measured, in words. */
export interface Coverage {
  readonly text: string;
  /** Feet that don't stand on the stations, or steps that leave the part. */
  readonly warns: boolean;
}

/** Steps that differ from the foot spacing by more than this part of it are warned of. */
const mostMisfit = 0.01;

const figure = (value: number) => shortNumber(value, 2);

export function coverage(form: SetupForm): Coverage | undefined {
  if (form.kind === 'way' || form.kind === 'bed') return ofWalk(form);
  return form.kind === 'plate' ? ofPlate(form) : ofSweep(form);
}

function ofWalk(form: SetupForm): Coverage | undefined {
  const [length, base, stations] = [form.length, form.base, form.stations].map(readNumber);
  if (!length || !base || !stations || stations < 2) return undefined;
  const covered = (stations - 1) * base;
  const steps = `${stations - 1} steps of ${figure(base)} are ${figure(covered)} ${form.lengthUnit}`;
  const left = length - covered;
  if (Math.abs(left) < 1e-6 * length) return { text: `${steps}: the whole way.`, warns: false };
  if (left < 0) return { text: `${steps}: ${figure(-left)} more than the way is long.`, warns: true };
  return { text: `${steps}: ${figure(left)} of the way stay unread, drawn half at each end.`, warns: false };
}

function ofSweep({ length, stations, lengthUnit, kind }: SetupForm): Coverage | undefined {
  const [whole, count] = [readNumber(length), readNumber(stations)];
  if (!whole || !count || count < 2) return undefined;
  if (kind === 'repeat') return undefined;
  const places = kind === 'dovetail' ? 'places' : 'stations';
  return {
    text: `${figure(count)} ${places} over ${figure(whole)} ${lengthUnit}: one every ${figure(whole / (count - 1))}.`,
    warns: false,
  };
}

function ofPlate(form: SetupForm): Coverage | undefined {
  const [length, width, border, base] = [form.length, form.width, form.border, form.base].map(readNumber);
  if (!length || !width || !base || border === null || border === undefined) return undefined;
  const [x, y] = [length - 2 * border, width - 2 * border];
  if (x <= 0 || y <= 0) return undefined;
  const grid = form.pattern === 'grid';
  const lines = [
    { name: 'lengthwise', span: x },
    { name: 'crosswise', span: y },
    ...(grid ? [] : [{ name: 'on the diagonals', span: Math.hypot(x, y) }]),
  ].map(({ name, span }) => {
    const steps = grid ? Math.max(1, Math.round(span / base)) : evenSteps(span, base);
    return { name, steps, step: span / steps };
  });
  const said = lines.map(({ name, steps, step }) => `${name} ${steps} steps of ${figure(step)}`).join(', ');
  const left = `The border leaves ${figure(x)} × ${figure(y)} ${form.lengthUnit}: ${said}.`;
  const misfits = lines.filter(({ step }) => Math.abs(step - base) > mostMisfit * base);
  if (misfits.length === 0) return { text: `${left} The feet fit.`, warns: false };
  const names = misfits.map(({ name }) => name).join(' and ');
  return {
    text: `${left} Feet ${figure(base)} apart do not stand on these stations ${names}: change the border or the foot spacing.`,
    warns: true,
  };
}
