import { inflateRawSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { zip } from './zip.ts';

// Read back by the layout of PKWARE's APPNOTE 6.3, section 4.3.
test('an archive holds what was put in, and its directory finds it', () => {
  const modified = new Date(2026, 2, 2, 8, 30, 10);
  const entries = [
    { name: 'job/job.json', bytes: Buffer.from('{"job":1}\n'.repeat(100)), modified },
    { name: 'job/bänke.txt', bytes: Buffer.alloc(0), modified },
  ];
  const bytes = zip(entries);
  const end = bytes.length - 22;
  expect(bytes.readUInt32LE(end)).toBe(0x06054b50);
  expect(bytes.readUInt16LE(end + 10)).toBe(2);
  let at = bytes.readUInt32LE(end + 16);
  expect(at + bytes.readUInt32LE(end + 12)).toBe(end);
  for (const { name, bytes: content } of entries) {
    expect(bytes.readUInt32LE(at)).toBe(0x02014b50);
    const nameLength = bytes.readUInt16LE(at + 28);
    expect(bytes.toString('utf8', at + 46, at + 46 + nameLength)).toBe(name);
    const local = bytes.readUInt32LE(at + 42);
    expect(bytes.readUInt32LE(local)).toBe(0x04034b50);
    const start = local + 30 + bytes.readUInt16LE(local + 26);
    const packed = bytes.subarray(start, start + bytes.readUInt32LE(local + 18));
    expect(inflateRawSync(packed).equals(content)).toBe(true);
    expect(bytes.readUInt32LE(local + 22)).toBe(content.length);
    at += 46 + nameLength;
  }
});
