import type { SetupInput } from '../../shared/session/setup.ts';

/** The invented machine of the demo. */
export const demoSetup: SetupInput = {
  kind: 'way',
  part: 'Gap-bed lathe, bed 03',
  surface: 'front way',
  lengthMm: 1800,
  baseMm: 150,
  stations: 13,
  level: { name: 'level L2', source: 'cable', port: 'simulated', profile: 'line-decimal', unit: 'um/m' },
  limitUm: 10,
  operator: 'visitor',
  support: '3 feet, carriage at the tail',
  partC: 19.6,
  airC: 20.1,
};
