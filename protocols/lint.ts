import { binaryFindings } from './lint/binary-parts.ts';
import { channelFindings } from './lint/channels.ts';
import { exampleFindings } from './lint/examples.ts';
import type { Finding } from './lint/finding.ts';
import { frameFindings } from './lint/frame.ts';
import { talkFindings } from './lint/talk.ts';
import { textFindings } from './lint/text-parts.ts';
import type { Profile } from './profile.ts';

export type { Finding };

/** What in a profile contradicts itself, and what its owner should know. */
export function lint(profile: Profile): Finding[] {
  return [
    ...channelFindings(profile),
    ...frameFindings(profile),
    ...talkFindings(profile),
    ...textFindings(profile),
    ...binaryFindings(profile),
    ...exampleFindings(profile),
  ];
}
