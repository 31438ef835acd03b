import type { ReferenceKind } from '../../shared/figures/reference.ts';
import { type ReadingBehind, readingsBehind } from '../../shared/reduce/behind.ts';
import type { Session } from '../../shared/session/fold.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { validateSheet } from '../../shared/sheet/sheet.ts';
import { type Placement, placementKey } from '../../shared/survey/plan.ts';

/** What is being explained in the working: a height by the readings that make it, or a reading by what checks it. */
export type Lit =
  | { readonly is: 'height'; readonly line: string; readonly station: string }
  | { readonly is: 'reading'; readonly place: Placement };

/** The readings that make a height over its reference line. */
export function behindHeight(
  session: Session,
  lit: Extract<Lit, { is: 'height' }>,
  reference: ReferenceKind,
): ReadingBehind[] {
  return readingsBehind(validateSheet(toSheet(session)), lit.line, lit.station, reference);
}

/** What each reading counts, by `placementKey`. */
export function weightsOf(behind: readonly ReadingBehind[]): ReadonlyMap<string, number> {
  return new Map(
    behind.map(({ run, at, weight }) => [placementKey({ run, at: [...at] as Placement['at'] }), weight]),
  );
}

/** How strongly each reading is lit, from 0 to 1, by `placementKey`. */
export function strengths(behind: readonly ReadingBehind[]): ReadonlyMap<string, number> {
  const most = Math.max(1e-12, ...behind.map(({ weight }) => Math.abs(weight)));
  return new Map([...weightsOf(behind)].map(([key, weight]) => [key, Math.abs(weight) / most]));
}
