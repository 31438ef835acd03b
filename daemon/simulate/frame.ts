import { channelFor } from '../../protocols/channels.ts';
import { encode } from '../../protocols/encode.ts';
import type { Profile } from '../../protocols/profile.ts';
import { converted, type ReadUnit } from '../../protocols/quantities.ts';
import type { InstrumentSetup } from '../../shared/session/setup.ts';

const internalUnit = { length: 'um', slope: 'um/m', temperature: 'degC' } as const;
/** Last digit that a simulated instrument shows, in the internal unit. */
const lastDigit = 0.1;

/**
 * The bytes in which an instrument of that set-up says what it reads, delimiter and all.
 * @param value in µm/m or µm, as the channel measures
 * @param spoken unit in which it speaks, when that is not the unit of the set-up
 * @throws WayscribeError `profile.invalid` when the profile has no such channel, or no room for the number
 */
export function frameOf(
  profile: Profile,
  { unit, channel: wanted, graduation }: InstrumentSetup,
  value: number,
  spoken: ReadUnit = unit,
): string {
  const channel = channelFor(profile, unit, wanted);
  const inSpoken = (size: number) =>
    converted(channel.quantity, size, internalUnit[channel.quantity], spoken) / graduation;
  const decimals = Math.max(0, Math.ceil(-Math.log10(inSpoken(lastDigit)) - 1e-9));
  return encode(profile, [
    {
      channel: channel.name,
      value: inSpoken(value),
      state: 'ok',
      decimals,
      // A unit is named only where it is not what the channel is known to speak.
      ...(spoken !== channel.unit && { unit: spoken }),
    },
  ]);
}
