import type { Channel, Profile } from '../profile.ts';
import { measures, type ReadUnit, unitsFor } from '../quantities.ts';
import { error, type Finding } from './finding.ts';
import { finestStep, largestSize } from './reach.ts';

/** Whether channels and parts belong together, and units to what they measure. */
export function channelFindings(profile: Profile): Finding[] {
  const { channels, says } = profile;
  const found: Finding[] = [];
  channels.forEach((channel, k) => {
    const place = `channels.${k}`;
    if (channels.findIndex(({ name }) => name === channel.name) < k) {
      found.push(error(`${place}.name`, `"${channel.name}" is there twice`));
    }
    found.push(...unitFinding(`${place}.unit`, channel, channel.unit));
    const numbers = says.parts.filter(
      (part) => part.part === 'number' && part.channel === channel.name,
    ).length;
    if (numbers !== 1) {
      found.push(error(place, `${numbers} parts tell the number of "${channel.name}": it must be one`));
    }
    found.push(...rangeFindings(profile, channel, place));
  });
  says.parts.forEach((part, k) => {
    if (!('channel' in part) || part.channel === undefined) return;
    if (channels.some(({ name }) => name === part.channel)) return;
    found.push(error(`says.parts.${k}.channel`, `there is no channel "${part.channel}"`));
  });
  says.parts.forEach((part, k) => {
    if (part.part !== 'unit') return;
    const place = `says.parts.${k}`;
    for (const channel of channels.filter(
      ({ name }) => part.channel === undefined || part.channel === name,
    )) {
      for (const unit of Object.values(part.means))
        found.push(...unitFinding(`${place}.means`, channel, unit));
      const missing = 'optional' in part && part.optional;
      if (!channel.unitKnown && !missing) {
        found.push(error(place, `always names the unit of "${channel.name}", whose unitKnown is false`));
      }
    }
  });
  return found;
}

function unitFinding(place: string, { name, quantity }: Channel, unit: ReadUnit): Finding[] {
  if (measures(quantity, unit)) return [];
  const right = unitsFor(quantity).join(', ');
  return [error(place, `${unit} is no unit of ${quantity}, which "${name}" tells: use one of ${right}`)];
}

function rangeFindings(profile: Profile, channel: Channel, place: string): Finding[] {
  const { name, range, resolution } = channel;
  const found: Finding[] = [];
  if (range && range[0] >= range[1]) found.push(error(`${place}.range`, 'the lowest value comes first'));
  if (range && resolution !== undefined && resolution > range[1] - range[0]) {
    found.push(error(`${place}.resolution`, 'is coarser than the whole range'));
  }
  // What stands in the frame can be compared only while it is in the unit of the channel.
  const named = profile.says.parts.some(
    (part) => part.part === 'unit' && (part.channel === undefined || part.channel === name),
  );
  if (named) return found;
  const finest = finestStep(profile, channel);
  if (resolution !== undefined && finest !== undefined && resolution < finest * (1 - 1e-9)) {
    found.push(
      error(`${place}.resolution`, `is finer than ${finest}, the smallest step that the frame can say`),
    );
  }
  const most = largestSize(profile, channel);
  if (range && most !== undefined && Math.max(Math.abs(range[0]), Math.abs(range[1])) > most) {
    found.push(error(`${place}.range`, `reaches further than ${most}, the most that the frame can say`));
  }
  return found;
}
