import { z } from 'zod';
import { WayscribeError } from '../errors.ts';
import { eventSchema, type Header, headerSchema, isKept, type SessionEvent } from '../session/events.ts';
import { longestWaitMs, waitBetween } from './times.ts';

/**
 * A whole recording in memory, small enough for a million events: what is kept of a session as events, the stream of
 * readings as columns. An event is known by its place in the recording, counted from 0.
 */
export interface Recorded {
  readonly header: Header;
  /** Number of each event. */
  readonly seq: Float64Array;
  /** Monotonic clock of each event, ms. */
  readonly m: Float64Array;
  /** Time of each event since the first, ms, with long waits shortened. */
  readonly atMs: Float64Array;
  /** Value of each reading of the instrument that is moved, in the unit of the set-up; NaN for all else. */
  readonly value: Float64Array;
  /** 1 for each event that is a reading of the instrument that is moved. */
  readonly moved: Uint8Array;
  /** Every event but the stream of readings, and its place. */
  readonly kept: readonly SessionEvent[];
  readonly keptAt: readonly number[];
  /** Waits that were shortened: the place of the event behind each, and how long it really was, ms. */
  readonly pauses: readonly { readonly before: number; readonly ms: number }[];
}

/** What is looked at of the many readings; the rest of such a line was proved when it was written. */
const readingLine = z.object({
  seq: z.number(),
  t: z.number(),
  m: z.number(),
  from: z.string(),
  value: z.number().nullable(),
});
const knownTypes: ReadonlySet<unknown> = new Set(
  eventSchema.options.map((option) => option.shape.type.value),
);

/**
 * Reads the text of a recording. A torn last line and events of a later version are passed over.
 * @param name of the file, for the error
 * @throws WayscribeError `recording.broken` with the number of the line
 */
export function readRecorded(text: string, name: string): Recorded {
  let builder: Builder | null = null;
  let number = 0;
  for (let start = 0; start < text.length; ) {
    const end = text.indexOf('\n', start);
    if (end < 0 && builder) break;
    number += 1;
    const line = text.slice(start, end < 0 ? text.length : end);
    start = end < 0 ? text.length : end + 1;
    const json = parse(line, name, number);
    if (builder) addLine(builder, json, name, number);
    else builder = new Builder(headerOf(json, name));
  }
  if (!builder) throw broken(name, 1, 'the file is empty', 'open the file of a recording');
  return builder.end();
}

/** The same from events that are in memory already. */
export function recordedOf(header: Header, events: Iterable<SessionEvent>): Recorded {
  const builder = new Builder(header);
  for (const event of events) builder.add(event);
  return builder.end();
}

function parse(line: string, name: string, number: number): unknown {
  try {
    return JSON.parse(line);
  } catch {
    const what = number === 1 ? 'is not the header of a recording' : 'is not JSON';
    throw broken(name, number, what, number === 1 ? 'open the file of a recording' : undefined);
  }
}

function headerOf(json: unknown, name: string): Header {
  const parsed = headerSchema.safeParse(json);
  if (parsed.success) return parsed.data;
  const [issue] = parsed.error.issues;
  throw broken(name, 1, `is not the header of a recording: ${issue!.path.join('.')} ${issue!.message}`);
}

function addLine(builder: Builder, json: unknown, name: string, number: number): void {
  const type = (json as { type?: unknown } | null)?.type;
  if (type === 'reading') {
    const parsed = readingLine.safeParse(json);
    if (!parsed.success) throw broken(name, number, 'is no reading');
    if (!builder.follows(parsed.data.seq)) throw broken(name, number, 'stands out of order');
    builder.addReading(parsed.data);
    return;
  }
  const parsed = eventSchema.safeParse(json);
  if (!parsed.success) {
    if (typeof type === 'string' && !knownTypes.has(type)) return;
    const [issue] = parsed.error.issues;
    throw broken(name, number, `is no event: ${issue!.path.join('.')} ${issue!.message}`);
  }
  if (!builder.follows(parsed.data.seq)) throw broken(name, number, 'stands out of order');
  builder.add(parsed.data);
}

function broken(name: string, line: number, what: string, remedy = 'see what `verify` says'): WayscribeError {
  return new WayscribeError('recording.broken', `${name} line ${line}`, what, remedy);
}

type Timed = Pick<z.infer<typeof readingLine>, 'seq' | 't' | 'm'>;

/** Columns that grow. */
class Builder {
  readonly #header: Header;
  #count = 0;
  #seq = new Float64Array(1024);
  #m = new Float64Array(1024);
  #atMs = new Float64Array(1024);
  #value = new Float64Array(1024);
  #moved = new Float64Array(1024);
  #lastT = 0;
  readonly #kept: SessionEvent[] = [];
  readonly #keptAt: number[] = [];
  readonly #pauses: { before: number; ms: number }[] = [];

  constructor(header: Header) {
    this.#header = header;
  }

  follows(seq: number): boolean {
    return this.#count === 0 || seq > this.#seq[this.#count - 1]!;
  }

  add(event: SessionEvent): void {
    if (isKept(event)) {
      this.#kept.push(event);
      this.#keptAt.push(this.#count);
    }
    if (event.type === 'reading') this.addReading(event);
    else this.#put(event, event.type, false, Number.NaN);
  }

  addReading(reading: z.infer<typeof readingLine>): void {
    const moved = reading.from === this.#header.setup.instrument.name;
    this.#put(reading, 'reading', moved, (moved ? reading.value : null) ?? Number.NaN);
  }

  end(): Recorded {
    return {
      header: this.#header,
      seq: this.#seq.slice(0, this.#count),
      m: this.#m.slice(0, this.#count),
      atMs: this.#atMs.slice(0, this.#count),
      value: this.#value.slice(0, this.#count),
      moved: Uint8Array.from(this.#moved.subarray(0, this.#count)),
      kept: this.#kept,
      keptAt: this.#keptAt,
      pauses: this.#pauses,
    };
  }

  #put({ seq, t, m }: Timed, type: string, moved: boolean, value: number): void {
    const k = this.#count;
    if (k === this.#seq.length) {
      this.#seq = grown(this.#seq);
      this.#m = grown(this.#m);
      this.#atMs = grown(this.#atMs);
      this.#value = grown(this.#value);
      this.#moved = grown(this.#moved);
    }
    const wait = k === 0 ? 0 : waitBetween({ t: this.#lastT, m: this.#m[k - 1]!, type: '' }, { t, m, type });
    if (wait > longestWaitMs) this.#pauses.push({ before: k, ms: wait });
    this.#seq[k] = seq;
    this.#m[k] = m;
    this.#atMs[k] = (k === 0 ? 0 : this.#atMs[k - 1]!) + Math.min(wait, longestWaitMs);
    this.#value[k] = value;
    this.#moved[k] = Number(moved);
    this.#lastT = t;
    this.#count += 1;
  }
}

function grown(column: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> {
  const wider = new Float64Array(2 * column.length);
  wider.set(column);
  return wider;
}
