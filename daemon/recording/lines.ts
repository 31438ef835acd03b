import { open } from 'node:fs/promises';
import { WayscribeError } from '../../shared/errors.ts';
import { whyUnreadable } from '../unreadable.ts';

const CHUNK_BYTES = 1 << 20;
const LINE_END = 10;

/** No line of a recording is longer; what is longer is no recording. */
const MAX_LINE_BYTES = 4 << 20;

/** One line of a file, without its line end. */
export interface RawLine {
  /** Counted from 1. */
  readonly number: number;
  readonly bytes: Buffer;
  /** Offset of the byte after the line and its line end. */
  readonly end: number;
  /** False for what stands after the last line end of the file. */
  readonly whole: boolean;
}

/**
 * The lines of a file in groups, in bounded memory. Split at byte 10, which never occurs inside a UTF-8
 * character. Throws `recording.notFound` or `recording.broken`.
 */
export async function* readLines(path: string): AsyncGenerator<RawLine[]> {
  const file = await open(path).catch((error) => {
    throw new WayscribeError('recording.notFound', path, whyUnreadable(error), 'name a recording');
  });
  try {
    let rest = Buffer.alloc(0);
    let number = 0;
    let offset = 0;
    for (;;) {
      // A new chunk each time, for the lines handed out are views into it.
      const { buffer, bytesRead } = await file
        .read(Buffer.allocUnsafeSlow(CHUNK_BYTES), 0, CHUNK_BYTES, null)
        .catch((error) => {
          throw new WayscribeError('recording.broken', path, whyUnreadable(error), 'name a recording');
        });
      if (bytesRead === 0) break;
      const chunk = buffer.subarray(0, bytesRead);
      const bytes = rest.length > 0 ? Buffer.concat([rest, chunk]) : chunk;
      const lines: RawLine[] = [];
      let start = 0;
      for (let at = bytes.indexOf(LINE_END); at >= 0; at = bytes.indexOf(LINE_END, start)) {
        number += 1;
        offset += at + 1 - start;
        lines.push({ number, bytes: bytes.subarray(start, at), end: offset, whole: true });
        start = at + 1;
      }
      rest = bytes.subarray(start);
      if (lines.length > 0) yield lines;
      if (rest.length > MAX_LINE_BYTES) {
        throw new WayscribeError('recording.broken', `${path} line ${number + 1}`, 'is longer than 4 MiB');
      }
    }
    if (rest.length > 0) {
      yield [{ number: number + 1, bytes: rest, end: offset + rest.length, whole: false }];
    }
  } finally {
    await file.close();
  }
}
