import type { ReadingState } from '../shared/session/events.ts';
import type { Channel, Profile } from './profile.ts';
import { converted, type ReadUnit } from './quantities.ts';
import type { Slot } from './slots.ts';
import { whole } from './whole.ts';

/** What one channel of a whole frame says. */
export interface ChannelReading {
  readonly channel: string;
  /** In the unit that the frame names, else in the unit of the channel; null when the state is no number. */
  readonly value: number | null;
  readonly state: ReadingState;
  /** Only when the frame itself names it. */
  readonly unit?: ReadUnit;
  /** Digits behind the point, where the frame shows them. */
  readonly decimals?: number;
}

/** Either what each channel says, in the order of the profile, or why it is no frame. */
export type Decoding = { readonly ok: readonly ChannelReading[] } | { readonly why: string };

/**
 * Reads one frame by its profile: first whether it is whole, then what it says, then whether the instrument can
 * say that. Pure, and linear in the length of the frame.
 * @param frame the bytes of one frame without their delimiter, one character a byte
 */
export function decode(profile: Profile, frame: string): Decoding {
  const matched = whole(profile, frame);
  if ('why' in matched) return matched;
  const readings = says(profile, matched.slots);
  const why = impossible(profile, readings);
  return why === null ? { ok: readings } : { why };
}

/** States in which a number, if there is one, is no reading. */
const numberless: ReadonlySet<ReadingState> = new Set<ReadingState>(['over-range', 'error']);

/** What a whole frame says, channel by channel. */
function says(profile: Profile, slots: readonly Slot[]): ChannelReading[] {
  return profile.channels.map(({ name, factor }) => {
    const own = slots.filter(({ channel }) => channel === undefined || channel === name);
    const [unit, number] = [last(own, 'unit')?.unit, last(own, 'number')];
    const state = last(own, 'instead')?.state ?? last(own, 'state')?.state ?? 'ok';
    const value = number && !numberless.has(state) ? Number(number.text) * factor : null;
    return {
      channel: name,
      // Minus nought is nought.
      value: value === 0 ? 0 : value,
      state,
      ...(unit !== undefined && { unit }),
      ...(number?.decimals !== undefined && { decimals: number.decimals }),
    };
  });
}

function last<K extends Slot['kind']>(
  slots: readonly Slot[],
  kind: K,
): Extract<Slot, { kind: K }> | undefined {
  return slots.findLast((slot): slot is Extract<Slot, { kind: K }> => slot.kind === kind);
}

/** Why the instrument can't have said that, or null. */
function impossible(profile: Profile, readings: readonly ChannelReading[]): string | null {
  for (const [k, channel] of profile.channels.entries()) {
    const why = outOfRange(channel, readings[k]!);
    if (why !== null) return why;
  }
  return null;
}

function outOfRange(channel: Channel, { value, unit, state }: ChannelReading): string | null {
  const { name, quantity, range } = channel;
  if (value === null) return state === 'ok' ? `says nothing for ${name}` : null;
  if (!Number.isFinite(value)) return `says no number for ${name}`;
  if (!range) return null;
  const counted = converted(quantity, value, unit ?? channel.unit, channel.unit);
  return counted < range[0] || counted > range[1]
    ? `says ${value} for ${name}, which is outside ${range[0]} to ${range[1]} ${channel.unit}`
    : null;
}
