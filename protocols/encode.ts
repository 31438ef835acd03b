import { writeBinary } from './binary-body.ts';
import { bytesOf } from './bytes.ts';
import type { ChannelReading } from './decode.ts';
import { writeJson } from './json-body.ts';
import type { Channel, Profile } from './profile.ts';
import { sealed } from './seal.ts';
import type { Speech, Spoken } from './slots.ts';
import { writeText } from './text-body.ts';

/**
 * The inverse of `decode`: the bytes with which the instrument would say `readings`, delimiter and all, one
 * character a byte. A channel that is left out reads nought.
 * @throws WayscribeError `profile.invalid` when a number has no room in the frame
 */
export function encode(profile: Profile, readings: readonly ChannelReading[]): string {
  const { frame } = profile;
  const delimiter = frame.ends === 'delimiter' ? bytesOf(frame.delimiter) : '';
  return encodeFrame(profile, readings) + delimiter;
}

/** The same without the delimiter. */
export function encodeFrame(profile: Profile, readings: readonly ChannelReading[]): string {
  const speech: Speech = new Map(
    profile.channels.map((channel) => {
      const reading = readings.find((candidate) => candidate.channel === channel.name);
      return [channel.name, spoken(channel, reading)];
    }),
  );
  return sealed(profile.sum, content(profile, speech));
}

function content({ says }: Profile, speech: Speech): string {
  switch (says.as) {
    case 'text':
      return writeText(says, speech);
    case 'json':
      return writeJson(says, speech);
    default:
      return writeBinary(says, speech);
  }
}

function spoken(channel: Channel, reading: ChannelReading | undefined): Spoken {
  return {
    value: (reading?.value ?? 0) / channel.factor,
    decimals: reading?.decimals,
    unit: reading?.unit ?? channel.unit,
    named: reading?.unit !== undefined,
    state: reading?.state ?? 'ok',
  };
}
