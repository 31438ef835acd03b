import type { Rebuild } from './rebuild.ts';

/** The invented way of the rebuild: hollow by 40 µm where the carriage has worked most. */
export const wornFrontWay: Omit<Rebuild, 't'> = {
  setup: {
    kind: 'way',
    part: 'Gap-bed lathe, bed 03',
    surface: 'front way',
    prefix: 'F',
    lengthMm: 1800,
    baseMm: 150,
    stations: 13,
    back: 'same',
    operator: 'first shift',
    support: '3 feet, carriage off',
    partC: 19.6,
    airC: 20.1,
    instrument: {
      name: 'level L2',
      serial: 'simulated',
      source: 'cable',
      port: 'simulated',
      profile: 'line-decimal',
      unit: 'um/m',
      sigma: 1.2,
      provedOn: '2026-02-27',
    },
  },
  asFound: (x) => worn(x / 1800),
  limitUm: 10,
  source: 'agreed with the customer, 27 February',
  target: { shape: 'flat', crownUm: 0, tilt: 'free', biteUm: 4, stopPasses: 1, passesPerRound: 5 },
  hand: { biteUm: 4.5, uneven: 0.15 },
  seed: 5,
  asLeft: { operator: 'second shift', partC: 20.4, airC: 20.9 },
};

function worn(x: number): number {
  const wear = -39.8 * Math.exp(-(((x - 0.36) / 0.24) ** 2));
  return wear + 4 * Math.exp(-(((x - 0.82) / 0.12) ** 2)) + 1.2 * Math.sin(19 * x);
}
