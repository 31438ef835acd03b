import { WayscribeError } from '../errors.ts';
import { checkSheet } from './checks.ts';
import { sheetFromCsv } from './csv.ts';
import { explainIssue } from './explain.ts';
import { type Sheet, sheetSchema } from './schema.ts';

export {
  type Kind,
  kinds,
  type Reference,
  references,
  type Sheet,
  type SheetInput,
  type Sweep,
  sheetSchema,
  type Walk,
} from './schema.ts';

/** No sheet is read beyond these. */
export const maxSheetBytes = 64 * 1024 * 1024;
export const maxReadings = 1_000_000;

/**
 * A survey sheet from its text, JSON or the CSV form (see `sheetFromCsv`), proved to make sense.
 *
 * @throws WayscribeError `sheet.notASheet`, `sheet.tooLarge`, `sheet.invalid` or `sheet.unknownStation`;
 * `place` is a path in the sheet, as `walks[0].readings[3]`.
 */
export function parseSheet(text: string): Sheet {
  if (text.length > maxSheetBytes) {
    throw new WayscribeError('sheet.tooLarge', '', 'the sheet is over 64 MiB', 'split the survey');
  }
  const body = text.replace(/^\uFEFF/, '').trimStart();
  return validateSheet(/^sheet\s*[,;]/i.test(body) ? sheetFromCsv(body) : sheetFromJson(body));
}

/** As `parseSheet`, for a sheet that is a value already. */
export function validateSheet(raw: unknown): Sheet {
  if (!isObject(raw) || !('sheet' in raw)) throw notASheet();
  if (countReadings(raw) > maxReadings) {
    throw new WayscribeError(
      'sheet.tooLarge',
      '',
      'the sheet has over 1,000,000 readings',
      'split the survey into sheets of fewer readings',
    );
  }
  refuseReserved(raw);
  const parsed = sheetSchema.safeParse(withKnownSizes(raw), { reportInput: true });
  if (!parsed.success) throw explainIssue(parsed.error.issues[0]!);
  checkSheet(parsed.data);
  return parsed.data;
}

function sheetFromJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (!text.startsWith('{')) throw notASheet();
    const reason = String(error instanceof Error ? error.message : error).replaceAll(/\s+/g, ' ');
    throw new WayscribeError('sheet.notASheet', '', `this is not JSON: ${reason}`, 'mend it at that place');
  }
}

function notASheet(): WayscribeError {
  return new WayscribeError(
    'sheet.notASheet',
    '',
    'this is not a survey sheet',
    'a sheet begins {"sheet": 1,',
  );
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** A name that an object of the language can't hold as one among others. */
function refuseReserved(raw: Record<string, unknown>): void {
  for (const field of ['stations', 'lines']) {
    const names = raw[field];
    if (!isObject(names) || !Object.hasOwn(names, '__proto__')) continue;
    throw new WayscribeError(
      'sheet.invalid',
      `${field}.__proto__`,
      'this name can be given to nothing in a sheet',
      'name it otherwise',
    );
  }
}

function countReadings(raw: Record<string, unknown>): number {
  return [raw.walks, raw.sweeps]
    .flatMap((groups) => (Array.isArray(groups) ? groups : []))
    .reduce((sum, group) => sum + (Array.isArray(group?.readings) ? group.readings.length : 0), 0);
}

const wholeSizes: ReadonlySet<unknown> = new Set(['dovetail', 'collars', 'repeat']);

/** Sizes are whole, and so is what a repeat gauge reads: their offset and slope are known unless the sheet says otherwise. */
function withKnownSizes(raw: Record<string, unknown>): unknown {
  if (!wholeSizes.has(raw.kind) || !Array.isArray(raw.sweeps)) return raw;
  const known = { offset: 'known', slope: 'known' };
  return { ...raw, sweeps: raw.sweeps.map((sweep) => (isObject(sweep) ? { ...known, ...sweep } : sweep)) };
}
