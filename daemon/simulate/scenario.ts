import type { SetupInput } from '../../shared/session/setup.ts';
import type { Shape } from './level.ts';

/** The demo: an invented machine, set up so that nothing has to be typed. */
export const demoSetup: SetupInput = {
  kind: 'way',
  part: 'Gap-bed lathe, bed 03',
  surface: 'front way',
  round: 'as found',
  prefix: 'F',
  lengthMm: 1800,
  baseMm: 150,
  stations: 13,
  level: {
    name: 'level L2',
    source: 'cable',
    port: 'simulated',
    profile: 'line-decimal',
    serial: 'simulated',
    unit: 'um/m',
  },
  limitUm: 10,
  operator: 'visitor',
  support: '3 feet, carriage at the tail',
  partC: 19.6,
  airC: 20.1,
};

/**
 * A worn bed: hollow where the carriage has worked most, a third of the way from the headstock, a little
 * high towards the tail, and out of level as a whole.
 */
export function wornBed(lengthMm: number): Shape {
  return (xMm) => {
    const x = xMm / lengthMm;
    const wear = -16 * Math.exp(-(((x - 0.32) / 0.17) ** 2));
    const proud = 3.5 * Math.exp(-(((x - 0.78) / 0.12) ** 2));
    const marks = 0.8 * Math.sin(21 * x);
    return wear + proud + marks + 0.03 * xMm;
  };
}
