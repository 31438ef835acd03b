import { WayscribeError } from '../shared/errors.ts';
import { type Finding, lint } from './lint.ts';
import { type Profile, profileSchema } from './profile.ts';

/** A profile with what is to be known about it; without one when something in it is wrong. */
export interface CheckedProfile {
  readonly profile: Profile | null;
  readonly findings: readonly Finding[];
}

/** Checks data that should be a profile: first its form, then whether it contradicts itself. */
export function checkProfile(data: unknown): CheckedProfile {
  const parsed = profileSchema.safeParse(data);
  if (!parsed.success) {
    const findings = parsed.error.issues.map(({ path, message }) => {
      return { kind: 'error', place: path.join('.') || 'profile', message } as const;
    });
    return { profile: null, findings };
  }
  const findings = lint(parsed.data);
  return { profile: findings.some(({ kind }) => kind === 'error') ? null : parsed.data, findings };
}

/**
 * The profile in `data`.
 * @param from what it is called in the error, as a file name
 * @throws WayscribeError `profile.invalid` with the first thing that is wrong, and how many more there are
 */
export function readProfile(data: unknown, from: string): Profile {
  const { profile, findings } = checkProfile(data);
  if (profile) return profile;
  const errors = findings.filter(({ kind }) => kind === 'error');
  const [first] = errors;
  const more = errors.length > 1 ? ` (and ${errors.length - 1} more)` : '';
  throw new WayscribeError(
    'profile.invalid',
    from,
    `${first!.place}: ${first!.message}${more}`,
    'wayscribe profiles check names everything',
  );
}
