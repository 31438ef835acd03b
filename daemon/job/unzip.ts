import { crc32, inflateRawSync } from 'node:zlib';
import { WayscribeError } from '../../shared/errors.ts';
import type { ZipEntry } from './zip.ts';

const CENTRAL = 0x02014b50;
const LOCAL = 0x04034b50;
const END = 0x06054b50;
const END_BYTES = 22;
const CENTRAL_BYTES = 46;
const LOCAL_BYTES = 30;
const ENCRYPTED = 1;
const LONGEST_COMMENT = 0xffff;

/** What an archive may come to, so that a small one cannot fill the computer. */
export const UNZIP_LIMITS = { files: 10_000, bytes: 2 ** 30 } as const;

/**
 * The files in a ZIP archive (PKWARE APPNOTE 6.3; stored or deflated, neither encrypted nor ZIP64), folders left out.
 * Every file is checked by its length and its CRC-32. Names are as they stand in the archive: no paths to be trusted.
 * Throws `job.invalid`.
 */
export function unzip(bytes: Buffer, limits: { files: number; bytes: number } = UNZIP_LIMITS) {
  const end = endOf(bytes);
  const count = bytes.readUInt16LE(end + 10);
  if (count > limits.files) throw invalid(`holds ${count} files, more than ${limits.files}`);
  const files: Omit<ZipEntry, 'modified'>[] = [];
  let [at, left] = [bytes.readUInt32LE(end + 16), limits.bytes];
  for (let k = 0; k < count; k += 1) {
    if (at + CENTRAL_BYTES > end || bytes.readUInt32LE(at) !== CENTRAL) {
      throw invalid(`its list of files breaks off after ${k} of ${count}`);
    }
    const nameEnd = at + CENTRAL_BYTES + bytes.readUInt16LE(at + 28);
    const name = nameFrom(bytes.subarray(at + CENTRAL_BYTES, nameEnd));
    const size = bytes.readUInt32LE(at + 24);
    if (size > left) throw invalid(`comes to more than ${limits.bytes} bytes`);
    if (!name.endsWith('/')) files.push({ name, bytes: contentOf(bytes, at, name, size) });
    left -= size;
    at = nameEnd + bytes.readUInt16LE(at + 30) + bytes.readUInt16LE(at + 32);
  }
  return files;
}

function endOf(bytes: Buffer): number {
  for (
    let at = bytes.length - END_BYTES;
    at >= Math.max(0, bytes.length - END_BYTES - LONGEST_COMMENT);
    at -= 1
  ) {
    if (bytes.readUInt32LE(at) === END) return at;
  }
  throw invalid('is no ZIP archive, or was cut off');
}

function nameFrom(bytes: Buffer): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw invalid('a name in it is not UTF-8');
  }
}

/** Unpacks the file whose entry in the list is at `at`. */
function contentOf(bytes: Buffer, at: number, name: string, size: number): Buffer {
  const local = bytes.readUInt32LE(at + 42);
  const wrong = (what: string) => invalid(`${JSON.stringify(name)} ${what}`);
  if (bytes.readUInt16LE(at + 8) & ENCRYPTED) throw wrong('is encrypted');
  if (local + LOCAL_BYTES > bytes.length || bytes.readUInt32LE(local) !== LOCAL)
    throw wrong('is not where it should be');
  const start = local + LOCAL_BYTES + bytes.readUInt16LE(local + 26) + bytes.readUInt16LE(local + 28);
  const packed = bytes.subarray(start, start + bytes.readUInt32LE(at + 20));
  const content = unpacked(packed, bytes.readUInt16LE(at + 10), size);
  if (content?.length !== size || crc32(content) !== bytes.readUInt32LE(at + 16)) {
    throw wrong('is damaged, or packed in a way that is not read');
  }
  return content;
}

function unpacked(packed: Buffer, method: number, size: number): Buffer | null {
  if (method === 0) return packed;
  if (method !== 8) return null;
  try {
    return inflateRawSync(packed, { maxOutputLength: Math.max(1, size) });
  } catch {
    return null;
  }
}

function invalid(what: string): WayscribeError {
  return new WayscribeError('job.invalid', '', what, 'give an archive that `wayscribe job zip` has made');
}
