import { nibblePlaces } from '../binary-body.ts';
import type { Channel, Profile } from '../profile.ts';

/** The smallest step that the frame can say of a channel, in its unit; undefined when that is not fixed. */
export function finestStep(profile: Profile, { name, factor }: Channel): number | undefined {
  const decimals = decimalsOf(profile, name);
  return decimals === undefined ? undefined : Math.abs(factor) * 10 ** -decimals;
}

/** The largest size that the frame can say of a channel, in its unit; undefined when that is not fixed. */
export function largestSize(profile: Profile, { name, factor }: Channel): number | undefined {
  const part = numberOf(profile, name);
  const decimals = decimalsOf(profile, name);
  if (!part || decimals === undefined) return undefined;
  const step = Math.abs(factor) * 10 ** -decimals;
  if ('digits' in part) return step * (10 ** part.digits[1] - 1);
  if (!('is' in part)) return undefined;
  const width = nibblePlaces(part).length;
  if (part.is === 'bcd') return step * (10 ** width - 1);
  return part.is === 'int' ? step * 2 ** (4 * width - 1) : step * (2 ** (4 * width) - 1);
}

/** Digits behind the point, where they are the same in every frame. */
function decimalsOf(profile: Profile, name: string): number | undefined {
  const part = numberOf(profile, name);
  if (!part) return undefined;
  if ('digits' in part) return part.exponent ? undefined : part.decimals;
  const moving = profile.says.parts.some((other) => other.part === 'decimals' && other.channel === name);
  if (!('is' in part) || part.is === 'float' || moving) return undefined;
  return part.decimals ?? 0;
}

function numberOf(profile: Profile, name: string) {
  for (const part of profile.says.parts) if (part.part === 'number' && part.channel === name) return part;
  return undefined;
}
