import { isWayscribeError } from '../../shared/errors.ts';
import { headerSchema } from '../../shared/session/events.ts';
import { ChainCheck } from './chain-check.ts';
import { type RawLine, readLines } from './lines.ts';
import { parseEvent } from './plain-reading.ts';
import { TakeCheck } from './take-check.ts';

/** What is wrong on a line. */
export interface Problem {
  /** Counted from 1, the header. */
  readonly line: number;
  /** Number of the event as it stands on the line. */
  readonly seq?: number;
  readonly what: string;
}

export interface VerifyReport {
  readonly lines: number;
  /** Number of the last event. */
  readonly seq: number;
  /** The last event is an `end`. An open recording may have been cut off, which nothing in it can tell. */
  readonly closed: boolean;
  /** Link of the last line. Whoever knows it from elsewhere knows whether this is the same file. */
  readonly link: string;
  /** The first problems, in the order of the lines. */
  readonly problems: readonly Problem[];
  /** How many more there are. */
  readonly more: number;
}

const PROBLEMS_LISTED = 100;

/**
 * Checks a recording from the first byte to the last: every link of the chain, the order of the numbers,
 * that every line can be read, and that every take is the mean of the readings that it names. Throws
 * `recording.notFound` when there is no such file; everything else is a problem in the report.
 */
export async function verifyRecording(path: string): Promise<VerifyReport> {
  const chain = new ChainCheck();
  const takes = new TakeCheck();
  const problems: Problem[] = [];
  let more = 0;
  let lines = 0;
  let seq = 0;
  let closed = false;
  let wasSound = true;

  const tell = (line: number, found: unknown, what: string) => {
    if (problems.length === PROBLEMS_LISTED) more += 1;
    else problems.push({ line, ...(typeof found === 'number' && { seq: found }), what });
  };

  const check = (line: RawLine) => {
    lines = line.number;
    closed = false;
    const follows = chain.follows(line.bytes);
    const json = parse(line.bytes);
    const found = json?.seq;
    const due = seq + 1;
    const sound = follows && line.whole && json !== null;
    if (!line.whole) tell(line.number, found, 'is torn: it has no line end');
    else if (json === null) tell(line.number, found, 'is not JSON');
    else if (line.number === 1) {
      if (!headerSchema.safeParse(json).success) tell(1, found, 'is not the header of a recording');
      else if (!follows) tell(1, found, 'the header was changed');
    } else if (!follows) tell(line.number, found, explain(found, due));
    else if (wasSound && found !== due) tell(line.number, found, `bears not the number ${due} that was due`);
    else {
      const event = parseEvent(json);
      if (event.success) {
        closed = event.data.type === 'end';
        const what = takes.check(event.data);
        if (what) tell(line.number, found, what);
      }
    }
    if (!sound) takes.doubt();
    wasSound = sound;
    if (Number.isSafeInteger(found)) seq = found as number;
  };

  try {
    for await (const group of readLines(path)) group.forEach(check);
  } catch (error) {
    if (!isWayscribeError(error, 'recording.broken')) throw error;
    tell(lines + 1, undefined, error.detail);
  }
  if (lines === 0 && problems.length === 0) tell(1, undefined, 'the file is empty');
  return { lines, seq, closed, link: chain.link, problems, more };
}

/** Why a line does not follow the one before, as far as its number tells. */
function explain(found: unknown, due: number): string {
  if (!Number.isSafeInteger(found)) return 'was changed or inserted: it bears no number';
  const seq = found as number;
  if (seq > due) {
    const missing = seq - due === 1 ? `number ${due} is` : `numbers ${due} to ${seq - 1} are`;
    return `does not follow the line before: ${missing} missing, or this line was changed`;
  }
  if (seq < due) return 'does not belong here: it was inserted or moved';
  return 'was changed: its link does not match';
}

function parse(bytes: Buffer): { seq?: unknown } | null {
  try {
    const json = JSON.parse(bytes.toString());
    return typeof json === 'object' ? json : null;
  } catch {
    return null;
  }
}
