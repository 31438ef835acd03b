import { WayscribeError } from '../shared/errors.ts';
import { type Profile, profileSchema } from './profile.ts';
import askDecimal from './profiles/ask-decimal.json' with { type: 'json' };
import lineDecimal from './profiles/line-decimal.json' with { type: 'json' };

/** The profiles that come with the program. */
export const shippedProfiles: readonly Profile[] = [lineDecimal, askDecimal].map((data) =>
  profileSchema.parse(data),
);

/**
 * The shipped profile of that name.
 * @throws WayscribeError `profile.invalid` when there is none
 */
export function findProfile(id: string): Profile {
  const profile = shippedProfiles.find((candidate) => candidate.id === id);
  if (profile) return profile;
  const known = shippedProfiles.map((candidate) => candidate.id).join(', ');
  throw new WayscribeError('profile.invalid', id, 'no such instrument profile', `known are ${known}`);
}
