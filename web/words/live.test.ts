import { expect, test } from 'vitest';
import type { Live } from '../../shared/messages.ts';
import { fromInternal, tiltUnits } from '../../shared/units.ts';
import { lasting, liveWords, tipWords } from './live.ts';

const live = (change: Partial<Live>): Live => ({
  from: 'L',
  m: 0,
  value: 12.44,
  state: 'ok',
  steadiness: 'steady',
  mean: 12.4,
  spread: 0.2,
  trend: 0,
  steadyForMs: 0,
  armed: true,
  ...change,
});

test('a reading is a size and a foot, never a sign; turned round it is the other foot', () => {
  expect(liveWords(live({}), 'um/m', 1)).toEqual({ digits: '12.4', unit: 'µm/m', words: 'far foot HIGH' });
  expect(liveWords(live({}), 'um/m', -1).words).toBe('far foot LOW');
  expect(liveWords(live({ value: -12.44 }), 'um/m', 1)).toMatchObject({
    digits: '12.4',
    words: 'far foot LOW',
  });
});

test('what rounds to nothing has no side', () => {
  expect(liveWords(live({ value: -0.04 }), 'um/m', 1)).toMatchObject({ digits: '0.0', words: 'feet level' });
});

test('the same tilt has the same words in every unit', () => {
  for (const unit of tiltUnits) {
    expect(liveWords(live({ value: fromInternal('tilt', 20, unit) }), unit, 1).words).toBe('far foot HIGH');
  }
});

test('what is no number is said, and no number is shown', () => {
  expect(liveWords(live({ value: null, state: 'over-range' }), 'um/m', 1)).toMatchObject({
    digits: '—',
    words: 'beyond its range',
  });
  expect(liveWords(live({ value: 999, state: 'hold' }), 'um/m', 1).digits).toBe('—');
  expect(liveWords(null, 'um/m', 1).digits).toBe('—');
});

test('an indicator tells metal by the difference from where the sweep began', () => {
  expect(tipWords(live({}), 'um', 1, null)).toEqual({ digits: '12.4', unit: 'µm', words: 'as it reads' });
  const from = { value: 8.4, name: 'T0' };
  expect(tipWords(live({}), 'um', 1, from)).toMatchObject({ digits: '4.0', words: 'HIGHER than T0' });
  expect(tipWords(live({}), 'um', -1, from).words).toBe('LOWER than T0');
  expect(tipWords(live({ value: 8.41 }), 'um', 1, from).words).toBe('level with T0');
});

test('ages are told as people tell them', () => {
  expect([1234, 9_960, 61_000, 600_000, 8_000_000].map(lasting)).toEqual([
    '1.2 s',
    '10 s',
    '61 s',
    '10 min',
    '2 h',
  ]);
});
