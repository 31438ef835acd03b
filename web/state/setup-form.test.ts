import { expect, test } from 'vitest';
import { coverage, demoForm, emptyForm, readForm, stationsFor } from './setup-form.ts';

test('the form of the demo is whole', () => {
  const { setup, errors } = readForm(demoForm);
  expect(errors).toEqual({});
  expect(setup).toMatchObject({
    lengthMm: 1800,
    baseMm: 150,
    stations: 13,
    instrument: { port: 'simulated' },
  });
});

test('what is missing is named beside its field, in words', () => {
  const { setup, errors } = readForm(emptyForm);
  expect(setup).toBeNull();
  expect(Object.keys(errors).sort()).toEqual(['length', 'part', 'port', 'profile', 'stations']);
  for (const text of Object.values(errors)) expect(text).toMatch(/\.$/);
});

test.each([
  ['length', '-3'],
  ['length', 'long'],
  ['base', '0'],
  ['stations', '1'],
  ['stations', '2.5'],
  ['partC', '200'],
  ['limit', '-1'],
  ['sigma', '0'],
] as const)('%s "%s" is refused there', (field, text) => {
  expect(Object.keys(readForm({ ...demoForm, [field]: text }).errors)).toEqual([field]);
});

test('inches become millimetres, exactly', () => {
  const { setup } = readForm({ ...demoForm, lengthUnit: 'in', length: '70,5', base: '6' });
  expect(setup).toMatchObject({ lengthMm: 70.5 * 25.4, baseMm: 6 * 25.4 });
});

test('a typed level has a graduation and no port, and nothing is taken by itself', () => {
  const { setup } = readForm({
    ...demoForm,
    source: 'typed',
    unit: 'mm/m',
    graduation: '0,02',
    sigma: '0.2',
  });
  expect(setup?.instrument).toMatchObject({ source: 'typed', graduation: 0.02, unit: 'mm/m', sigma: 0.2 });
  expect(setup?.instrument.port).toBeUndefined();
  expect(setup?.handsFree).toBe(false);
});

test('stations are one more than the whole steps', () => {
  expect(stationsFor('1800', '150')).toBe('13');
  expect(stationsFor('1799', '150')).toBe('12');
  expect(stationsFor('0.9', '0.3')).toBe('4');
  expect(stationsFor('', '150')).toBe('');
  expect(stationsFor('100', '150')).toBe('');
});

test('whether the steps cover the way is said in words', () => {
  expect(coverage(demoForm)).toBe('12 steps of 150 are 1,800 mm: the whole way.');
  expect(coverage({ ...demoForm, length: '1900' })).toMatch(
    /^12 steps of 150 are 1,800 mm: 100 of the way stay unread/,
  );
  expect(coverage({ ...demoForm, length: '1700' })).toMatch(/100 more than the way is long/);
});
