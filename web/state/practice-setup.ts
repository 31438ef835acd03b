import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { SetupInput } from '../../shared/session/setup.ts';
import { type Kind, kindWords } from '../words/kinds.ts';

/** How far a reading comes again when the simulated instrument is set down anew, in its own unit. */
const sigmaOf = { tilt: 0.35, height: 0.0001 } as const;

/** The demo of a kind, a way walked out and back, so that what is wrong can be found. */
export function practiceSetup(kind: Kind): SetupInput {
  const setup = demoSetups[kind];
  const instrument = { ...setup.instrument, sigma: sigmaOf[kindWords[kind].reads] };
  return { ...setup, round: 'practice', ...(kind === 'way' && { back: 'same' }), instrument };
}
