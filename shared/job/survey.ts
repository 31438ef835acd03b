import { adjust } from '../adjust/adjust.ts';
import type { AdjustedHeights } from '../adjust/adjusted.ts';
import { reduce } from '../reduce.ts';
import type { Session } from '../session/fold.ts';
import { toSheet } from '../session/to-sheet.ts';
import type { Result } from '../sheet/result.ts';
import { type Sheet, type SheetInput, validateSheet } from '../sheet/sheet.ts';
import type { AgreedLimit, ChangeOf } from './document.ts';
import type { JobSurface } from './job.ts';

/** One survey of a job with all that it comes to, judged by what the job agreed on. */
export interface JobSurvey {
  readonly record: ChangeOf<'survey'>;
  /** The session, when the survey is a recording and not an imported sheet. */
  readonly session: Session | null;
  readonly sheet: Sheet;
  readonly heights: AdjustedHeights;
  readonly result: Result;
  /** Agreed limits of figures that this survey does not make. */
  readonly notMeasured: readonly AgreedLimit[];
}

/**
 * A survey judged by the agreed limits of its surface, and planned towards its target. Where the job agreed on
 * nothing, the limits and the target of the survey itself stand.
 * @throws WayscribeError when the survey does not hang together
 */
export function surveyOf(
  { limits, target }: Pick<JobSurface, 'limits' | 'target'>,
  record: ChangeOf<'survey'>,
  from: { readonly session: Session } | { readonly sheet: SheetInput },
): JobSurvey {
  const session = 'session' in from ? from.session : null;
  const plain = validateSheet('session' in from ? toSheet(from.session) : from.sheet);
  const found = reduce({ ...plain, limits: [] });
  const made = limits.filter(({ figure }) => makes(found, figure));
  const sheet = validateSheet({
    ...plain,
    ...(limits.length > 0 && { limits: made.map(({ figure, max }) => ({ figure, max })) }),
    ...(target && { target: withoutRounds(target) }),
  });
  return {
    record,
    session,
    sheet,
    heights: adjust(sheet).heights,
    result: reduce(sheet),
    notMeasured: limits.filter((limit) => !made.includes(limit)),
  };
}

function withoutRounds({ passesPerRound: _, ...target }: NonNullable<JobSurface['target']>) {
  return target;
}

/** The lines of stations that a plan or contact preview of this name is about: one line, or all of a plate. */
export function linesUnder(
  { sheet, heights }: Pick<JobSurvey, 'sheet' | 'heights'>,
  name?: string,
): string[][] {
  const one = name === undefined ? undefined : sheet.lines[name];
  if (one) return [one];
  const lines = Object.values(sheet.lines);
  const rest = heights.names.filter((station) => !lines.some((line) => line.includes(station)));
  return rest.length > 0 ? [...lines, rest] : lines;
}

const lineEndings = ['.straightness', '.hollow', '.bulge'];

function makes({ figures, lines, reference }: Result, figure: string): boolean {
  if (Object.hasOwn(figures, figure) || Object.hasOwn(figures, `${figure}.${reference}`)) return true;
  return lineEndings.some(
    (ending) => figure.endsWith(ending) && Object.hasOwn(lines, figure.slice(0, -ending.length)),
  );
}
