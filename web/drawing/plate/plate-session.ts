import type { Session } from '../../../shared/session/fold.ts';
import type { SetupOf } from '../../../shared/session/setup.ts';

export type PlateSession = Session & { readonly setup: SetupOf<'plate'> };

/** The rectangle that the stations cover, mm; it begins at 0, 0. */
export function coveredMm({ setup }: PlateSession): { readonly xMm: number; readonly yMm: number } {
  return { xMm: setup.lengthMm - 2 * setup.borderMm, yMm: setup.widthMm - 2 * setup.borderMm };
}
