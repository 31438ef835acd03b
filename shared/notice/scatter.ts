import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import type { Notice } from './notice.ts';

/**
 * The point that χ²/f passes in one of a thousand cases, f degrees of freedom (Wilson and Hilferty 1931, from memory). The survey is
 * looked at after every take, so the usual 95 % would cry out often for nothing.
 */
function rare(f: number): number {
  const share = 2 / (9 * f);
  return (1 - share + 3.09 * Math.sqrt(share)) ** 3;
}

/** The readings as a whole disagree by more than the instrument was proved to scatter, and no single one is to blame. */
export function scatter({ setup }: Session, result: Result | null): Notice[] {
  if (!result) return [];
  const { s0, degreesOfFreedom, sigmaScaled } = result.fit;
  if (setup.instrument.sigma === undefined || sigmaScaled || s0 === null || s0 ** 2 <= rare(degreesOfFreedom))
    return [];
  if (result.readings.some(({ suspect }) => suspect)) return [];
  return [
    {
      code: 'scatter',
      text: `The readings scatter ${s0.toFixed(1)} times as much as one reading is known to. Something moves: warm hands, a draught, feet that rock, the floor. Find it, then repeat.`,
      warns: true,
    },
  ];
}
