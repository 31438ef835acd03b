import { expect, test } from 'vitest';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import type { Kind } from '../words/kinds.ts';
import { coverage } from './coverage.ts';
import { emptyFormOf } from './fields.ts';
import { conditionEntries, partEntries, runEntries } from './layout.ts';
import { formOf, readForm, stationsFor } from './setup-form.ts';

const kinds = Object.keys(demoSetups) as Kind[];
const demoForm = formOf(demoSetups.way);

test.each(kinds)('the form of a %s says the set-up that it was made of', (kind) => {
  const { setup, errors } = readForm(formOf(demoSetups[kind]));
  expect(errors).toEqual({});
  const { serial: _serial, ...instrument } = setupSchema.parse(demoSetups[kind]).instrument;
  expect(setup).toEqual({ ...setupSchema.parse(demoSetups[kind]), instrument });
});

test.each([
  ['part', 120],
  ['surface', 60],
] as const)('a %s of 300 letters is refused with how many there may be', (field, count) => {
  const { setup, errors } = readForm({ ...demoForm, [field]: 'x'.repeat(300) });
  expect(setup).toBeNull();
  expect(errors).toEqual({ [field]: `Shorten it to ${count} letters at most.` });
});

test.each(kinds)('what is missing in a %s is named beside a field that is there, in words', (kind) => {
  const form = emptyFormOf(kind);
  const { setup, errors } = readForm(form);
  expect(setup).toBeNull();
  expect(Object.keys(errors)).toContain('part');
  const { about, size, ends } = partEntries(form);
  const entries = [...about, ...size, ...ends, ...runEntries(form), ...conditionEntries];
  const there = new Set<string>([...entries.map(({ field }) => field), 'port', 'profile']);
  for (const [field, text] of Object.entries(errors)) {
    expect(there).toContain(field);
    expect(text).toMatch(/\.$/);
  }
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

test('a border that leaves nothing of a plate is refused', () => {
  const form = { ...formOf(demoSetups.plate), border: '325' };
  expect(Object.keys(readForm(form).errors)).toEqual(['border']);
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

test('a port that is not in the list is typed', () => {
  const form = { ...demoForm, port: 'another' };
  expect(Object.keys(readForm(form).errors)).toEqual(['portPath']);
  expect(readForm({ ...form, portPath: ' /dev/gauge ' }).setup?.instrument.port).toBe('/dev/gauge');
});

test('stations are one more than the whole steps', () => {
  expect(stationsFor('1800', '150')).toBe('13');
  expect(stationsFor('1799', '150')).toBe('12');
  expect(stationsFor('0.9', '0.3')).toBe('4');
  expect(stationsFor('', '150')).toBe('');
  expect(stationsFor('100', '150')).toBe('');
});

test('whether the steps cover the way is said in words', () => {
  expect(coverage(demoForm)?.text).toBe('12 steps of 150 are 1,800 mm: the whole way.');
  expect(coverage({ ...demoForm, length: '1900' })).toEqual({
    text: '12 steps of 150 are 1,800 mm: 100 of the way stay unread, drawn half at each end.',
    warns: false,
  });
  expect(coverage({ ...demoForm, length: '1700' })).toMatchObject({ warns: true });
  expect(coverage(formOf(demoSetups.slide))?.text).toBe('7 stations over 600 mm: one every 100.');
});

test('feet that do not stand on the stations of a plate are warned of', () => {
  const plate = formOf(demoSetups.plate);
  expect(coverage(plate)).toEqual({
    text: 'The border leaves 800 × 600 mm: lengthwise 8 steps of 100, crosswise 6 steps of 100, on the diagonals 10 steps of 100. The feet fit.',
    warns: false,
  });
  const misfit = coverage({ ...plate, border: '40' });
  expect(misfit?.warns).toBe(true);
  expect(misfit?.text).toMatch(/do not stand on these stations lengthwise and crosswise and on the diag/);
  // 0.5 % is less than anybody can set down.
  expect(coverage({ ...plate, base: '100.5' })?.warns).toBe(false);
});
