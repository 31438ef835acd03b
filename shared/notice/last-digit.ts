import { z } from 'zod';
import type { Session } from '../session/fold.ts';
import { unitFactor } from '../units.ts';
import { countOf } from './reading.ts';

/** What of an instrument's profile tells its last digit; the rest of the copy in the header is not looked at. */
const channelsSchema = z.object({
  channels: z.array(
    z.object({
      name: z.string(),
      quantity: z.string(),
      unit: z.string(),
      resolution: z.number().positive().optional(),
    }),
  ),
});

/** Smallest step that the instrument of a session shows, in the unit of its set-up, by the profile that it talks by. */
export function lastDigitOf({ header, setup, plan }: Session): number | undefined {
  const profile = channelsSchema.safeParse(header.profile);
  if (!profile.success) return undefined;
  const tilt = plan.runs[0]?.reads === 'tilt';
  const fitting = profile.data.channels.filter(({ quantity }) => quantity === (tilt ? 'slope' : 'length'));
  const channel = fitting.find(({ name }) => name === setup.instrument.channel) ?? fitting[0];
  if (channel?.resolution === undefined) return undefined;
  try {
    return (channel.resolution * unitFactor(tilt ? 'tilt' : 'height', channel.unit)) / countOf(setup);
  } catch {
    return undefined;
  }
}
