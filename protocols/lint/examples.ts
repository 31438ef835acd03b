import { bytesOf } from '../bytes.ts';
import { type ChannelReading, decode } from '../decode.ts';
import type { Profile } from '../profile.ts';
import { error, type Finding, note } from './finding.ts';

type Example = Profile['examples'][number];

/** Whether each example says what it is said to say. */
export function exampleFindings(profile: Profile): Finding[] {
  const { examples } = profile;
  const found = examples.flatMap((example, k) => exampleFinding(profile, example, `examples.${k}`));
  if (!examples.some(({ reads }) => reads)) found.push(error('examples', 'none of them is a whole frame'));
  if (examples.every(({ reads }) => reads)) {
    found.push(note('examples', 'none of them is no frame: add what must be refused'));
  }
  const headless = examples.find((example) => example.reads && losesItsHead(profile, example));
  if (headless) {
    found.push(
      note(
        'says',
        `${JSON.stringify(headless.frame)} without its head is another whole frame: only a checksum would tell`,
      ),
    );
  }
  return found;
}

function exampleFinding(profile: Profile, { frame, reads }: Example, place: string): Finding[] {
  const decoding = decode(profile, bytesOf(frame));
  if (!reads) {
    return 'why' in decoding ? [] : [error(place, `is a whole frame: it says ${told(decoding.ok)}`)];
  }
  if ('why' in decoding) return [error(place, `is no frame: ${decoding.why}`)];
  const missing = profile.channels.find(({ name }) => !Object.hasOwn(reads, name));
  if (missing) return [error(`${place}.reads`, `tells nothing of "${missing.name}"`)];
  const strange = Object.keys(reads).find(
    (name) => !profile.channels.some((channel) => channel.name === name),
  );
  if (strange !== undefined) return [error(`${place}.reads`, `there is no channel "${strange}"`)];
  return decoding.ok
    .filter((reading) => !same(reading, reads[reading.channel]!))
    .map((reading) => error(`${place}.reads.${reading.channel}`, `it says ${told([reading])}`));
}

function same(found: ChannelReading, wanted: NonNullable<Example['reads']>[string]): boolean {
  return (
    found.value === wanted.value &&
    found.state === wanted.state &&
    found.unit === wanted.unit &&
    found.decimals === wanted.decimals
  );
}

function told(readings: readonly ChannelReading[]): string {
  return readings.map(({ channel, ...rest }) => `${channel} ${JSON.stringify(rest)}`).join(', ');
}

/** Whether the end of a frame can be a frame that says something else. */
function losesItsHead(profile: Profile, { frame }: Example): boolean {
  const bytes = bytesOf(frame);
  const right = JSON.stringify(decode(profile, bytes));
  for (let cut = 1; cut < bytes.length; cut += 1) {
    const decoding = decode(profile, bytes.slice(cut));
    if ('ok' in decoding && JSON.stringify(decoding) !== right) return true;
  }
  return false;
}
