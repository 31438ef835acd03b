import { isUtf8 } from 'node:buffer';
import { WayscribeError } from '../../shared/errors.ts';
import { eventSchema, type Header, headerSchema, type SessionEvent } from '../../shared/session/events.ts';
import { type RawLine, readLines } from './lines.ts';
import { parseEvent } from './plain-reading.ts';

const KNOWN_TYPES: ReadonlySet<unknown> = new Set(
  eventSchema.options.map((option) => option.shape.type.value),
);
/** How the writer begins a line of the stream of readings. */
const READING = /^\{"seq":\d+,"t":[-\d.e+]+,"m":[-\d.e+]+,"type":"reading"/;
const LONGEST_BEGINNING = 120;

export interface ReadOptions {
  /** Passes over the stream of readings without looking into it: much faster, for lists. */
  readonly skipReadings?: boolean;
  /** Offset of the byte behind the last line that is read; the whole file without it. */
  readonly until?: number;
}

/** A recording being read. The events must be read to the end, or left with `return`, to close the file. */
export interface RecordingStream {
  readonly header: Header;
  /** Events in groups, in their order. Unknown types of event and unknown fields are left out. */
  readonly groups: AsyncGenerator<SessionEvent[], void>;
}

export interface Recording {
  readonly header: Header;
  readonly events: SessionEvent[];
}

/**
 * Begins to read a recording of any length in bounded memory. A torn last line is passed over. Throws
 * `recording.notFound`, or `recording.broken` with the number of the line, here or while reading on.
 */
export async function streamRecording(path: string, options: ReadOptions = {}): Promise<RecordingStream> {
  const lines = readLines(path);
  const first = await lines.next();
  const [headerLine, ...others] = first.done ? [] : first.value;
  try {
    if (!headerLine) throw new WayscribeError('recording.broken', path, 'is empty');
    return { header: parseHeader(path, headerLine), groups: readEvents(path, others, lines, options) };
  } catch (error) {
    await lines.return(undefined);
    throw error;
  }
}

/** A whole recording at once. For long ones use `streamRecording`. */
export async function readRecording(path: string, options: ReadOptions = {}): Promise<Recording> {
  const { header, groups } = await streamRecording(path, options);
  const events: SessionEvent[] = [];
  for await (const group of groups) for (const event of group) events.push(event);
  return { header, events };
}

async function* readEvents(
  path: string,
  first: RawLine[],
  others: AsyncGenerator<RawLine[]>,
  { skipReadings = false, until = Number.POSITIVE_INFINITY }: ReadOptions,
): AsyncGenerator<SessionEvent[], void> {
  let seq = 0;
  const decode = (lines: RawLine[]): SessionEvent[] => {
    const events: SessionEvent[] = [];
    for (const line of lines) {
      if (!line.whole || line.end > until || (skipReadings && isReading(line.bytes))) continue;
      const event = eventOn(path, line);
      if (!event) continue;
      if (event.seq <= seq) throw broken(path, line, `number ${event.seq} follows number ${seq}`);
      seq = event.seq;
      events.push(event);
    }
    return events;
  };
  try {
    yield decode(first);
    for await (const lines of others) yield decode(lines);
  } finally {
    await others.return(undefined);
  }
}

function isReading(bytes: Buffer): boolean {
  return READING.test(bytes.toString('latin1', 0, LONGEST_BEGINNING));
}

function parseHeader(path: string, line: RawLine): Header {
  const json = parseJson(path, line, 'is not the header of a recording');
  const parsed = headerSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  const version = (json as { recording?: unknown } | null)?.recording;
  if (typeof version === 'number' && version !== 1) {
    throw broken(path, line, `is a recording of version ${version}`, 'this program reads version 1');
  }
  const [issue] = parsed.error.issues;
  throw broken(path, line, `is not the header of a recording: ${issue!.path.join('.')} ${issue!.message}`);
}

/** The event on a line; null when a later version wrote a type that this one does not know. */
function eventOn(path: string, line: RawLine): SessionEvent | null {
  const json = parseJson(path, line);
  const parsed = parseEvent(json);
  if (parsed.success) return parsed.data;
  const type = (json as { type?: unknown } | null)?.type;
  if (typeof type === 'string' && !KNOWN_TYPES.has(type)) return null;
  const [issue] = parsed.error.issues;
  throw broken(path, line, `is no event: ${issue!.path.join('.')} ${issue!.message}`);
}

function parseJson(path: string, line: RawLine, otherwise = 'is not JSON'): unknown {
  if (!isUtf8(line.bytes)) throw broken(path, line, 'is not UTF-8 text');
  try {
    return JSON.parse(line.bytes.toString());
  } catch {
    throw broken(path, line, otherwise);
  }
}

function broken(
  path: string,
  line: RawLine,
  what: string,
  remedy = 'see what `verify` says',
): WayscribeError {
  return new WayscribeError('recording.broken', `${path} line ${line.number}`, what, remedy);
}
