import { matchBinary } from './binary-body.ts';
import { matchJson } from './json-body.ts';
import type { Profile } from './profile.ts';
import { opened } from './seal.ts';
import type { Matched } from './slots.ts';
import { matchText } from './text-body.ts';

/**
 * Whether bytes are a whole frame: not too long, its checksum right, and every part where it belongs. Gives what
 * stands in it, not yet what that means. Pure, and linear in the length of the frame.
 * @param frame the bytes of one frame without their delimiter, one character a byte
 */
export function whole(profile: Profile, frame: string): Matched {
  const tooLong = wrongLength(profile, frame);
  if (tooLong !== null) return { why: tooLong };
  const content = opened(profile.sum, trimmed(profile, frame));
  if ('why' in content) return content;
  const { says } = profile;
  switch (says.as) {
    case 'text':
      return matchText(says, content.content);
    case 'json':
      return matchJson(says, content.content);
    default:
      return matchBinary(says, content.content);
  }
}

function wrongLength({ frame: rule }: Profile, frame: string): string | null {
  if (rule.ends === 'length') {
    return frame.length === rule.length ? null : `is ${frame.length} bytes long, not ${rule.length}`;
  }
  return frame.length > rule.longest ? `longer than ${rule.longest} bytes` : null;
}

/** Text without what is blank at its ends, unless a raw checksum byte could look so. */
function trimmed({ says, sum }: Profile, frame: string): string {
  const raw = says.as === 'bytes' || sum?.as === 'bytes';
  if (raw) return frame;
  let [start, end] = [0, frame.length];
  while (start < end && blank.includes(frame[start]!)) start += 1;
  while (end > start && blank.includes(frame[end - 1]!)) end -= 1;
  return frame.slice(start, end);
}

const blank = ' \t\r\n';
