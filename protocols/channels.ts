import { WayscribeError } from '../shared/errors.ts';
import type { Channel, Profile } from './profile.ts';

/**
 * The channel that a level is read from: the one of that name, else the first that tells a slope.
 * @throws WayscribeError `profile.invalid` when the instrument has no such channel
 */
export function slopeChannel(profile: Profile, name?: string): Channel {
  const slopes = profile.channels.filter(({ quantity }) => quantity === 'slope');
  const channel = name === undefined ? slopes[0] : slopes.find((candidate) => candidate.name === name);
  if (channel) return channel;
  const there = slopes.map((candidate) => candidate.name).join(', ');
  throw new WayscribeError(
    'profile.invalid',
    profile.id,
    name === undefined ? 'tells no slope' : `has no channel "${name}" that tells a slope`,
    there ? `choose one of ${there}` : 'choose the profile of a level',
  );
}
