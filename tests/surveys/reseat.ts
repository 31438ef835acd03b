import type { Setup } from '../../shared/session/setup.ts';
import { Conductor, hastyPace, type MadeUp } from '../tools/conduct.ts';

/**
 * Standard deviation of one take, in the unit of the set-up, as a shop finds it: lift, set down again on the same place,
 * take, many times over. It holds the noise that the mean of a window leaves, the last digit and what is left of the
 * swing; it is itself sure to about one part in √count.
 */
export async function reseatSigma(madeUp: Omit<MadeUp, 'pace'>, count: number): Promise<number> {
  const conductor = await Conductor.of({ ...madeUp, pace: hastyPace });
  const [place] = conductor.session.placements;
  for (let k = 0; k < count; k += 1) {
    await conductor.ask({ do: 'aim', place: place! });
    await conductor.place(place!);
  }
  await conductor.end();
  return deviation(conductor.session.takes.map(({ event }) => event.value));
}

/** A set-up whose instrument is proved: one take is known to be sure to `sigma`. */
export function proved(setup: Setup, sigma: number): Setup {
  return { ...setup, instrument: { ...setup.instrument, sigma } };
}

/** From the differences of takes that follow each other (von Neumann 1941), so that a drift of the zero drops out. */
function deviation(values: readonly number[]): number {
  const squares = values.slice(1).reduce((sum, value, k) => sum + (value - values[k]!) ** 2, 0);
  return Math.sqrt(squares / (2 * (values.length - 1)));
}
