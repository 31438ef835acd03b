import type { ChannelReading } from '../../protocols/decode.ts';
import type { Channel, Profile } from '../../protocols/profile.ts';
import { converted, type ReadUnit } from '../../protocols/quantities.ts';
import type { ReadingState } from '../../shared/session/events.ts';
import type { Random } from '../tools/random.ts';

/**
 * Readings that the profile can say, made up: numbers of every sign, now and then a state, each unit that it names.
 * Constructed.
 */
export function randomReadings(profile: Profile, random: Random): ChannelReading[] {
  const common = 'states' in profile.says ? Object.values(profile.says.states) : [];
  if (common.length > 0 && random.below(25) === 0) {
    const state = oneOf(common, random);
    return profile.channels.map(({ name }) => ({ channel: name, value: null, state }));
  }
  return profile.channels.map((channel) => randomReading(profile, channel, random));
}

function randomReading(profile: Profile, channel: Channel, random: Random): ChannelReading {
  const units: ReadUnit[] = [];
  const states: ReadingState[] = [];
  for (const part of profile.says.parts) {
    if (part.part === 'unit' && part.channel === channel.name) units.push(...Object.values(part.means));
    if (part.part === 'state' && part.channel === channel.name) states.push(...Object.values(part.means));
    if (part.part === 'number' && part.channel === channel.name) states.push(...Object.values(part.instead));
  }
  const unit = units.length > 0 ? { unit: oneOf(units, random) } : {};
  const state = states.length > 0 && random.below(20) === 0 ? oneOf(states, random) : 'ok';
  if (state === 'over-range' || state === 'error')
    return { channel: channel.name, value: null, state, ...unit };
  const [low, high] = channel.range ?? [-99, 99];
  const counted = Math.max(-99, low) + (Math.min(99, high) - Math.max(-99, low)) * random.next();
  const inUnit = converted(channel.quantity, counted, channel.unit, unit.unit ?? channel.unit);
  const decimals = decimalsOf(profile, channel) ?? (Math.abs(inUnit) < 1.5 ? 5 : 3);
  return { channel: channel.name, value: Number(inUnit.toFixed(decimals)), state, ...unit, decimals };
}

/** Digits behind the point where the profile fixes them. */
function decimalsOf(profile: Profile, { name }: Channel): number | undefined {
  for (const part of profile.says.parts) {
    if (part.part === 'number' && part.channel === name && 'decimals' in part) return part.decimals;
  }
  return undefined;
}

function oneOf<T>(list: readonly T[], random: Random): T {
  return list[random.below(list.length)]!;
}
