import { WayscribeError } from '../shared/errors.ts';
import type { Channel, Profile } from './profile.ts';
import { measures, type ReadUnit } from './quantities.ts';

/**
 * The channel that readings in `unit` come from: the one of that name, else the first that measures in it.
 * @throws WayscribeError `profile.invalid` when the instrument has no such channel
 */
export function channelFor(profile: Profile, unit: ReadUnit, name?: string): Channel {
  const fit = profile.channels.filter(({ quantity }) => measures(quantity, unit));
  const channel = name === undefined ? fit[0] : fit.find((candidate) => candidate.name === name);
  if (channel) return channel;
  const there = fit.map((candidate) => candidate.name).join(', ');
  throw new WayscribeError(
    'profile.invalid',
    profile.id,
    name === undefined ? `tells nothing in ${unit}` : `has no channel "${name}" that reads in ${unit}`,
    there ? `choose one of ${there}` : 'choose another unit, or another profile',
  );
}
