import { reduce } from '../reduce.ts';
import type { Result } from '../sheet/result.ts';
import { type Reference, validateSheet } from '../sheet/sheet.ts';
import type { Session } from './fold.ts';
import { type SheetOptions, toSheet } from './to-sheet.ts';

/**
 * The result of what counts of a session so far: the one way from a session to numbers, for the page, the API, the
 * command line and the replay alike.
 * @throws WayscribeError when nothing is taken yet, or when what is taken does not hang together
 */
export function resultOf(session: Session, reference?: Reference, options: SheetOptions = {}): Result {
  return reduce(validateSheet(toSheet(session, options)), reference === undefined ? {} : { reference });
}
