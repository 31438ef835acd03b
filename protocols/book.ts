import { WayscribeError } from '../shared/errors.ts';
import type { Profile } from './profile.ts';

/** The profiles that are known, by id. */
export class ProfileBook {
  readonly all: readonly Profile[];

  constructor(profiles: readonly Profile[]) {
    this.all = profiles;
  }

  /**
   * The profile of that id.
   * @throws WayscribeError `profile.invalid` when there is none
   */
  find(id: string): Profile {
    const profile = this.all.find((candidate) => candidate.id === id);
    if (profile) return profile;
    const known = this.all.map((candidate) => candidate.id).join(', ');
    throw new WayscribeError('profile.invalid', id, 'no such instrument profile', `known are ${known}`);
  }
}
