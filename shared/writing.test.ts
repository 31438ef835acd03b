import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toInternal } from './units.ts';
import { lineSentence, stationSentence } from './words.ts';
import { metric, writingFor } from './writing.ts';

const point = (value: number, decimals: number) => value.toFixed(decimals);
const comma = (value: number, decimals: number) => value.toFixed(decimals).replace('.', ',');
const inch = writingFor('in', point);

describe('inches', () => {
  // 1 in = 25.4 mm by definition (international yard and pound agreement, 1959): 25.4 µm is 0.001 in.
  test('heights are told in inches, columns count in ten-thousandths', () => {
    expect(inch.size(25.4, 0.3)).toBe('0.00100 in');
    expect(inch.size(9.6, 0.4)).toBe('0.00038 in');
    expect(inch.digits(9.6, 0.4)).toBe('3.8');
    expect(inch.head()).toBe('0.0001 in');
    expect(inch.sureTo(0.4)).toBe('sure to 0.00003 in');
    expect(inch.exact(2.54)).toBe('0.0001 in');
    expect(inch.exact(10)).toBe('0.0003937 in');
  });

  // 0.0005 in/ft is a common grade of level (common practice, no source): 0.0005 / 12 = 41.67 µm/m.
  test('slopes are told in inches for each foot', () => {
    expect(inch.size(41.6667, 1, 'µm/m')).toBe('0.00050 in/ft');
    expect(inch.head('µm/m')).toBe('0.0001 in/ft');
  });

  test('sentences follow', () => {
    expect(stationSentence('F4', -9.6, 0.4, inch)).toBe('F4 stands 0.00038 in LOW');
    expect(stationSentence('F4', 0.05, 0.4, inch)).toBe('F4 stands level, sure to 0.00003 in');
    const straightness = { valueUm: 9.6, uUm: 0.4, highest: 'F2', lowest: 'F7' };
    const stations = { F1: {}, F4: {}, F7: {} };
    const line = { straightness: { ends: straightness }, stations, shape: 'hollow' } as unknown as Parameters<
      typeof lineSentence
    >[1];
    expect(lineSentence('Front way', line, 'ends', inch)).toBe(
      'Front way 0.00038 in out of straight: hollow, F7 lowest',
    );
  });
});

test('a decimal comma stands where a point would', () => {
  const german = writingFor('mm', comma);
  expect(german.size(9.6, 0.4)).toBe('9,6 µm');
  expect(german.sureTo(0.4)).toBe('sure to 0,8 µm');
});

test('what is written in inches is the same height to the digits that are shown', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -5000, max: 5000, noNaN: true }),
      fc.double({ min: 0.01, max: 50, noNaN: true }),
      (um, u) => {
        const [digits] = inch.size(um, u).split(' ');
        const decimals = digits!.split('.')[1]?.length ?? 0;
        const half = toInternal('height', 0.5 * 10 ** -decimals, 'in');
        expect(Math.abs(toInternal('height', Number(digits), 'in') - Math.abs(um))).toBeLessThanOrEqual(
          half * (1 + 1e-6),
        );
        // Digits claim no less than is known, and no more than a tenth of it.
        expect(2 * half).toBeLessThanOrEqual(Math.max(u, 2.54 / 1000) * (1 + 1e-6) * 2.54);
        expect(inch.isNone(um, u)).toBe(Number(digits) === 0);
      },
    ),
  );
});

test('other units stay as they are', () => {
  expect(inch.size(3.2, 0.1, '″')).toBe('3.2 ″');
  expect(metric.head()).toBe('µm');
  expect(metric.one('µm/m')).toBe(1);
});
