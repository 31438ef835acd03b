/** The checksums that a frame may carry. */
export const sumKinds = ['xor', 'sum8', 'lrc', 'crc16-modbus'] as const;
export type SumKind = (typeof sumKinds)[number];

/** How many bytes wide each of them is. */
export const sumWidth: Record<SumKind, 1 | 2> = { xor: 1, sum8: 1, lrc: 1, 'crc16-modbus': 2 };

/**
 * Checksum of bytes, one character a byte.
 *
 * - `xor`: all bytes exclusive-or'ed together (NMEA 0183)
 * - `sum8`: the sum of all bytes, its low eight bits
 * - `lrc`: what `sum8` lacks to 256, as the MODBUS serial line guide defines its LRC
 * - `crc16-modbus`: polynomial 8005 reflected, begun with FFFF
 */
export function sumOf(kind: SumKind, bytes: string): number {
  switch (kind) {
    case 'xor':
      return fold(bytes, (sum, byte) => sum ^ byte, 0);
    case 'sum8':
      return fold(bytes, (sum, byte) => (sum + byte) & 0xff, 0);
    case 'lrc':
      return -sumOf('sum8', bytes) & 0xff;
    case 'crc16-modbus':
      return fold(bytes, (crc, byte) => (crc >>> 8) ^ crcTable[(crc ^ byte) & 0xff]!, 0xffff);
  }
}

function fold(bytes: string, step: (sum: number, byte: number) => number, start: number): number {
  let sum = start;
  for (let k = 0; k < bytes.length; k += 1) sum = step(sum, bytes.charCodeAt(k));
  return sum;
}

/** What each byte adds to the CRC: polynomial 8005, its bits reversed. */
const crcTable = Uint16Array.from({ length: 256 }, (_, byte) => {
  let crc = byte;
  for (let bit = 0; bit < 8; bit += 1) crc = crc & 1 ? (crc >>> 1) ^ 0xa001 : crc >>> 1;
  return crc;
});
