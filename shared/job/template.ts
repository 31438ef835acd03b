import type { Setup, SetupInput } from '../session/setup.ts';

/**
 * The set-up of the next round from that of the first: stations, foot spacing, facing, walks back, supports and
 * instrument as they were, so that the two can be compared. What has to be looked at anew (who, temperatures) is left
 * open.
 */
export function nextSetup(asFound: Setup, round: string): SetupInput {
  const { operator: _, partC: _part, airC: _air, ...alike } = asFound;
  return { ...alike, round };
}

/** What the rounds are called: as found, in work 1, in work 2 … The last one is named as left by the person. */
export function roundName(index: number): string {
  return index === 0 ? 'as found' : `in work ${index}`;
}
