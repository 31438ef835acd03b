import { WayscribeError } from '../../shared/errors.ts';
import { linkOf, NO_LINK, unseal } from './chain.ts';
import { type RawLine, readLines } from './lines.ts';

/** More than this is no torn line, and is not set aside in silence. */
const MAX_TORN_BYTES = 1 << 20;

/** The part of a recording that can be gone on with. */
export interface SoundPart {
  /** Number of its last event; 0 for the header. */
  readonly seq: number;
  /** Offset of the byte behind its last line. */
  readonly end: number;
  /** Link of its last line. */
  readonly link: string;
  /** What stands behind it, hex: a torn line, or what a power cut left of lines that were not synced. */
  readonly torn: string;
}

/**
 * Where a recording is sound up to: behind the last line that follows the line before it. Throws
 * `recording.notFound`, or `recording.broken` when more than a torn last line is damaged.
 */
export async function soundPart(path: string): Promise<SoundPart> {
  let before = NO_LINK;
  let last: { line: RawLine; link: string } | null = null;
  let rest: Buffer[] = [];
  let restBytes = 0;
  for await (const lines of readLines(path)) {
    for (const line of lines) {
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
  if (!last) throw broken(path, 1, 'is not the whole header of a recording');
  const { line, link } = last;
  return { seq: seqOf(path, line), end: line.end, link, torn: Buffer.concat(rest).toString('hex') };
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
