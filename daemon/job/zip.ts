import { crc32, deflateRawSync } from 'node:zlib';

/** One file in an archive. */
export interface ZipEntry {
  /** Path inside, with slashes. */
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly modified: Date;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const VERSION = 20;
const UTF8_NAMES = 0x0800;
const DEFLATED = 8;

/** A ZIP archive (PKWARE APPNOTE 6.3, deflate) of less than 65,536 files and 4 GiB. */
export function zip(entries: readonly ZipEntry[]): Buffer {
  const locals: Buffer[] = [];
  const central: Buffer[] = [];
  let offset = 0;
  for (const { name, bytes, modified } of entries) {
    const packed = deflateRawSync(bytes);
    const path = Buffer.from(name);
    const shared = sharedFields({
      crc: crc32(bytes),
      packed: packed.length,
      size: bytes.length,
      path,
      modified,
    });
    const local = Buffer.concat([u32(LOCAL), shared, path, packed]);
    // After the shared fields: comment, disk, attributes (2 + 4 bytes), place of the local header.
    central.push(
      Buffer.concat([u32(CENTRAL), u16(VERSION), shared, u16(0), u16(0), u16(0), u32(0), u32(offset), path]),
    );
    locals.push(local);
    offset += local.length;
  }
  const directory = Buffer.concat(central);
  const count = u16(entries.length);
  const end = [u32(END), u16(0), u16(0), count, count, u32(directory.length), u32(offset), u16(0)];
  return Buffer.concat([...locals, directory, ...end]);
}

interface Fields {
  readonly crc: number;
  readonly packed: number;
  readonly size: number;
  readonly path: Buffer;
  readonly modified: Date;
}

/** From "version needed" to "length of the extra field": alike in both headers. */
function sharedFields({ crc, packed, size, path, modified }: Fields): Buffer {
  const date =
    ((Math.max(1980, modified.getFullYear()) - 1980) << 9) |
    ((modified.getMonth() + 1) << 5) |
    modified.getDate();
  const time = (modified.getHours() << 11) | (modified.getMinutes() << 5) | (modified.getSeconds() >> 1);
  return Buffer.concat([
    ...[VERSION, UTF8_NAMES, DEFLATED, time, date].map(u16),
    ...[crc, packed, size].map(u32),
    ...[path.length, 0].map(u16),
  ]);
}

function u16(value: number): Buffer {
  const bytes = Buffer.alloc(2);
  bytes.writeUInt16LE(value);
  return bytes;
}

function u32(value: number): Buffer {
  const bytes = Buffer.alloc(4);
  bytes.writeUInt32LE(value >>> 0);
  return bytes;
}
