import type { ChangeOf, JobChange } from './document.ts';

/** The change that withdrew this one; undefined while it stands. */
export function withdrawalOf(
  { no }: JobChange,
  changes: readonly JobChange[],
): ChangeOf<'withdrawn'> | undefined {
  return changes.find((each): each is ChangeOf<'withdrawn'> => each.change === 'withdrawn' && each.of === no);
}
