import { z } from 'zod';
import { changeSchema, type JobChange, type JobHead, jobHeadSchema } from '../../shared/job/document.ts';
import { linkOf, NO_LINK, seal, unseal } from '../recording/chain.ts';

/**
 * The text of a job.json: JSON that anything can read, laid out so that every byte of it is tied down. The first line
 * is the head, then one change a line, each with its link as in a recording, then a line that counts them and repeats
 * the last link:
 *
 *     {"job":1,"part":"…","owner":"…","changes":[
 *     {"no":1,…,"h":"…"},
 *     {"no":2,…,"h":"…"}
 *     ],"count":2,"link":"…"}
 */

export interface JobDocument {
  readonly head: JobHead;
  readonly changes: readonly JobChange[];
  /** Link of the last change, or of the head while there is none. */
  readonly link: string;
}

/** What is wrong on a line of a job.json. */
export interface JobProblem {
  readonly line: number;
  readonly what: string;
}

const BEFORE_CHANGES = ',"changes":[';

/** The whole text for a head and its changes. */
export function jobText(head: JobHead, changes: readonly JobChange[]): { text: string; link: string } {
  const first = headLine(head);
  let link = linkOf(Buffer.from(first), NO_LINK);
  const lines = changes.map((change) => {
    const sealed = seal(JSON.stringify(change), link);
    link = sealed.link;
    return sealed.text;
  });
  const body = lines.length > 0 ? `${lines.join(',\n')}\n` : '';
  return { text: `${first}\n${body}${lastLine(changes.length, link)}`, link };
}

function headLine(head: JobHead): string {
  return JSON.stringify(head).slice(0, -1) + BEFORE_CHANGES;
}

function lastLine(count: number, link: string): string {
  return `],"count":${count},"link":"${link}"}\n`;
}

const sealedChange = z.object({ h: z.string() }).loose();

/** Reads a job.json and proves every byte of it. What is wrong is told line by line; `document` is null then. */
export function readJobText(bytes: Buffer): { document: JobDocument | null; problems: JobProblem[] } {
  const problems: JobProblem[] = [];
  const tell = (line: number, what: string) => problems.push({ line, what });
  const lines = splitLines(bytes);
  const [first, ...rest] = lines;
  const head = first && parseHead(first.toString());
  if (!first || !head) {
    return { document: null, problems: [{ line: 1, what: 'is not the head of a job' }] };
  }
  const end = rest.findIndex((line) => line.toString('latin1').startsWith('],'));
  const between = end < 0 ? rest : rest.slice(0, end);
  let link = linkOf(first, NO_LINK);
  const changes: JobChange[] = [];
  between.forEach((raw, k) => {
    const number = k + 2;
    const comma = k < between.length - 1;
    const line = comma && raw.at(-1) === COMMA ? raw.subarray(0, -1) : raw;
    const sealed = unseal(line);
    const sound = sealed && linkOf(sealed.body, link) === sealed.link && (!comma || raw.at(-1) === COMMA);
    const change = parseChange(line.toString());
    if (sealed) link = sealed.link;
    if (!sound) tell(number, k === 0 ? 'this line or the head was changed' : explain(change, k + 1));
    else if (!change) tell(number, 'is no change that this program knows');
    else if (change.no !== k + 1) tell(number, `bears not the number ${k + 1} that was due`);
    else changes.push(change);
  });
  const last = lastLine(between.length, link);
  if (end < 0) tell(lines.length + 1, 'the last line is missing: the file was cut off');
  else if (bytes.subarray(startOf(lines, end + 1)).toString('latin1') !== last) {
    tell(end + 2, 'the last line was changed, or changes before it are missing');
  }
  const document = problems.length === 0 ? { head, changes, link } : null;
  return { document, problems };
}

const COMMA = 44;
const LINE_END = 10;

function splitLines(bytes: Buffer): Buffer[] {
  const lines: Buffer[] = [];
  let start = 0;
  for (let at = bytes.indexOf(LINE_END); at >= 0; at = bytes.indexOf(LINE_END, start)) {
    lines.push(bytes.subarray(start, at));
    start = at + 1;
  }
  if (start < bytes.length) lines.push(bytes.subarray(start));
  return lines;
}

/** Where line `index` (from 0) begins. */
function startOf(lines: readonly Buffer[], index: number): number {
  return lines.slice(0, index).reduce((sum, line) => sum + line.length + 1, 0);
}

function parseHead(line: string): JobHead | null {
  if (!line.endsWith(BEFORE_CHANGES)) return null;
  const parsed = jobHeadSchema.safeParse(parseJson(`${line.slice(0, -BEFORE_CHANGES.length)}}`));
  // Written anew it must be the same: nothing hides in spaces or escapes of a head without changes.
  return parsed.success && headLine(parsed.data) === line ? parsed.data : null;
}

function parseChange(line: string): JobChange | null {
  const sealed = sealedChange.safeParse(parseJson(line));
  if (!sealed.success) return null;
  const { h: _, ...change } = sealed.data;
  const parsed = changeSchema.safeParse(change);
  return parsed.success ? parsed.data : null;
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function explain(change: JobChange | null, due: number): string {
  if (change && change.no > due) return `change ${due} is missing before it, or it was changed`;
  if (change && change.no < due) return 'does not belong here: it was inserted or moved';
  return 'was changed: its link does not match';
}
