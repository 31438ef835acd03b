import { expect, test } from 'vitest';
import { instrumentSchema } from '../session/setup.ts';
import { type ProvedInstrument, withProved } from './instruments.ts';
import { provingSchema } from './proving.ts';

const proved: ProvedInstrument = {
  t: 1,
  day: '2026-02-03',
  sign: 1,
  zero: 38,
  sigma: 0.6,
  proving: provingSchema.parse({
    name: 'L2',
    reads: 'tilt',
    source: 'cable',
    port: 'usb:0403:6001:serial:A1:00',
    profile: 'labelled-channels',
    channel: 'y',
    serial: '4711',
    unit: 'um/m',
    unitOpen: true,
    graduation: 0.5,
    resolution: 0.1,
    baseMm: 150,
    stepUm: 100,
    stepIs: 'feeler',
    by: 'visitor',
    takes: [],
  }),
};

/** What the person filled in: a cable has no field for what one count is. */
const filledIn = instrumentSchema.parse({
  name: 'L2',
  source: 'cable',
  port: 'usb:0403:6001:serial:A1:00',
  profile: 'labelled-channels',
  unit: 'um/m',
});

test('a set-up takes over what was proved of its instrument', () => {
  expect(withProved({ instrument: filledIn }, [proved]).instrument).toEqual({
    ...filledIn,
    channel: 'y',
    serial: '4711',
    graduation: 0.5,
    sigma: 0.6,
    provedOn: '2026-02-03 by visitor',
  });
});

test.each([
  { name: 'L3' },
  { port: '/dev/ttyS0' },
  { profile: 'columns-tab' },
  { channel: 'x' },
  { unit: 'arcsec' },
  { graduation: 2 },
  { sigma: 0.9 },
  { provedOn: '2025-01-01' },
] as const)('a set-up that says %j keeps what it says', (said) => {
  const setup = { instrument: { ...filledIn, ...said } };
  expect(withProved(setup, [proved])).toBe(setup);
});

test('only the last proving of an instrument counts', () => {
  const later = { ...proved, t: 2, sigma: 0.7 };
  expect(withProved({ instrument: filledIn }, [proved, later]).instrument.sigma).toBe(0.7);
});
