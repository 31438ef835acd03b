import { describe, expect, test } from 'vitest';
import { fromHex } from '../../protocols/bytes.ts';
import { decode } from '../../protocols/decode.ts';
import { profileSchema } from '../../protocols/profile.ts';
import { floatOf, hexOfFloat, integerOf } from '../../protocols/registers.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { sumOf } from '../../protocols/sums.ts';

/** Checksums, floats and sentences against what the open standards and their public descriptions print. */

describe('CRC-16/MODBUS', () => {
  test('check value of the catalogue of parametrised CRC algorithms (G. Cook): "123456789" gives 4B37', () => {
    expect(sumOf('crc16-modbus', '123456789')).toBe(0x4b37);
  });

  test.each([
    // From memory, unchecked: requests and answers often printed in descriptions of the protocol, low byte first.
    ['010300000002', 'c40b'],
    ['010402ffff', 'b880'],
    ['018402', 'c2c1'],
  ])('of %s is %s', (message, crc) => {
    const sum = sumOf('crc16-modbus', fromHex(message)).toString(16).padStart(4, '0');
    expect(sum.slice(2) + sum.slice(0, 2)).toBe(crc);
  });
});

test('the LRC of the MODBUS serial line guide is what the sum of the bytes lacks to 256', () => {
  // From memory, unchecked: the request 01 03 00 00 00 01, printed with LRC FB.
  expect(sumOf('lrc', fromHex('010300000001'))).toBe(0xfb);
});

describe('NMEA 0183', () => {
  test.each([
    // Sample sentences of the encyclopaedia article "NMEA 0183"; from memory, proved by their own checksums.
    ['$GPGGA,092750.000,5321.6802,N,00630.3372,W,1,8,1.03,61.7,M,55.2,M,,', '76'],
    ['$GPGSV,3,1,11,10,63,137,17,07,61,098,15,05,59,290,20,08,54,157,30', '70'],
    // The XDR sample of E. S. Raymond, "NMEA Revealed"; from memory, proved by its own checksum.
    ['$HCXDR,A,171,D,PITCH,A,-37,D,ROLL,G,367,,MAGX,G,2420,,MAGY,G,-8984,,MAGZ', '41'],
  ])('%s has checksum %s', (sentence, checksum) => {
    expect(sumOf('xor', sentence.slice(1)).toString(16)).toBe(checksum);
  });

  test('the printed XDR sentence is read when the profile names its talker and its transducers', () => {
    const own = structuredClone(findProfile('nmea-xdr'));
    if (own.says.as !== 'text') throw new Error('the sentence is text');
    const [talker, pitch, between, roll] = own.says.parts;
    const profile = profileSchema.parse({
      ...own,
      channels: own.channels.map((channel) => ({ ...channel, range: [-180, 180] })),
      says: {
        as: 'text',
        parts: [
          { ...talker, text: '$HCXDR,A,' },
          pitch,
          { ...between, text: ',D,PITCH,A,' },
          roll,
          { part: 'fixed', text: ',D,ROLL,G,367,,MAGX,G,2420,,MAGY,G,-8984,,MAGZ' },
        ],
      },
    });
    const sentence = '$HCXDR,A,171,D,PITCH,A,-37,D,ROLL,G,367,,MAGX,G,2420,,MAGY,G,-8984,,MAGZ*41';
    expect(decode(profile, sentence)).toMatchObject({
      ok: [
        { channel: 'pitch', value: 171 },
        { channel: 'roll', value: -37 },
      ],
    });
  });
});

describe('numbers in registers', () => {
  test.each([
    // IEEE 754 binary32, by the definition of its fields.
    ['3f800000', 1],
    ['c0000000', -2],
    ['3e200000', 0.15625],
    ['42c80000', 100],
    ['00000001', 2 ** -149],
    ['7f7fffff', (2 - 2 ** -23) * 2 ** 127],
    ['3ff0000000000000', 1],
    ['c024000000000000', -10],
  ])('%s is %d, and back', (digits, value) => {
    expect(floatOf(digits)).toBe(value);
    expect(hexOfFloat(value, digits.length)).toBe(digits);
  });

  test.each([
    ['int', '8000', '-32768'],
    ['int', 'ffff', '-1'],
    ['uint', 'ffff', '65535'],
    ['int', '7fffffff', '2147483647'],
    ['bcd', '001234', '001234'],
    ['bcd', '00123a', null],
  ] as const)('%s %s is %s', (is, digits, whole) => {
    expect(integerOf(is, digits)).toBe(whole);
  });
});
