import { WayscribeError } from '../../shared/errors.ts';
import { type Header, headerSchema } from '../../shared/session/events.ts';
import { AppendFile } from './append-file.ts';
import { linkOf, NO_LINK, unseal } from './chain.ts';
import { type OpenFile, openFile, recordingError } from './file.ts';
import { type RawLine, readLines } from './lines.ts';
import { RecordingWriter } from './writer.ts';

/** More than this is no torn line, and is not set aside in silence. */
const MAX_TORN_BYTES = 1 << 20;

export interface Reopened {
  readonly writer: RecordingWriter;
  readonly header: Header;
  /** Bytes of a torn last line, hex, for the `resumed` event; empty when the file ends whole. */
  readonly torn: string;
}

/**
 * Opens a recording to go on with it. What stands after the last whole line is set aside: it is taken from
 * the file by the first append. Damage further up is left as it is, for `verify` to name. Throws
 * `recording.notFound`, `recording.broken` or `recording.unwritable`.
 */
export async function reopenRecording(path: string, open: OpenFile = openFile): Promise<Reopened> {
  let header: Header | null = null;
  let before = NO_LINK;
  let last: { line: RawLine; link: string } | null = null;
  let rest: Buffer[] = [];
  let restBytes = 0;
  for await (const lines of readLines(path)) {
    for (const line of lines) {
      header ??= parseHeader(path, line.bytes);
      const sealed = unseal(line.bytes);
      if (line.whole && sealed && linkOf(sealed.body, before) === sealed.link) {
        last = { line, link: sealed.link };
        rest = [];
        restBytes = 0;
      } else {
        rest.push(line.bytes, Buffer.from(line.whole ? '\n' : ''));
        restBytes += line.bytes.length + 1;
        if (restBytes > MAX_TORN_BYTES)
          throw broken(path, line.number, 'more than a torn last line is damaged');
      }
      before = sealed?.link ?? before;
    }
  }
  if (!header || !last) throw broken(path, 1, 'is not the whole header of a recording');
  const seq = seqOf(path, last.line);
  const file = await open(path, 'existing').catch((error) => {
    throw recordingError(error, path);
  });
  const torn = Buffer.concat(rest).toString('hex');
  const lines = new AppendFile(file, last.line.end, torn !== '');
  const writer = new RecordingWriter(path, lines, seq, last.link);
  return { writer, header, torn };
}

function parseHeader(path: string, bytes: Buffer): Header {
  try {
    return headerSchema.parse(JSON.parse(bytes.toString()));
  } catch {
    throw broken(path, 1, 'is not the header of a recording');
  }
}

/** Number of the event on a line; 0 for the header. */
function seqOf(path: string, line: RawLine): number {
  if (line.number === 1) return 0;
  const { seq } = JSON.parse(line.bytes.toString());
  if (!Number.isSafeInteger(seq) || seq < 1) throw broken(path, line.number, 'has no number');
  return seq;
}

function broken(path: string, line: number, what: string): WayscribeError {
  return new WayscribeError('recording.broken', `${path} line ${line}`, what, 'see what `verify` says');
}
