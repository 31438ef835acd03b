import { expect, test } from 'vitest';
import { type Burst, brokenOffMs, key, type Outcome } from './keyed.ts';

/** Types keys, each so long after the one before, and gives back what came of them. */
function typed(keys: readonly (readonly [name: string, afterMs: number])[]) {
  let t = 1000;
  let burst: Burst | null = null;
  const outcomes: Outcome[] = [];
  for (const [name, after] of keys) {
    t += after;
    const next = key(burst, name, t);
    burst = next.burst;
    if (next.outcome) outcomes.push(next.outcome);
  }
  return { outcomes, held: burst?.text ?? null };
}
const fast = (text: string) => [...text].map((name) => [name, 5] as const);

test.each(['Enter', 'Tab'])('a reading ends with %s, and is stamped at its first and last key', (end) => {
  expect(typed([...fast('-12.34'), [end, 5]])).toEqual({
    outcomes: [{ is: 'whole', text: '-12.34', keyed: [1005, 1035] }],
    held: null,
  });
});

test('without its end it is nothing', () => {
  expect(typed(fast('12.34'))).toEqual({ outcomes: [], held: '12.34' });
});

test('a pause voids what came before it, and two halves never join', () => {
  const { outcomes } = typed([...fast('12.'), ['3', brokenOffMs + 1], ...fast('4'), ['Enter', 5]]);
  expect(outcomes).toEqual([
    { is: 'void', text: '12.', why: 'paused' },
    { is: 'void', text: '34', why: 'rest' },
  ]);
});

test('behind the rest of what broke off the next reading counts', () => {
  const broken = [...fast('-12'), ['5', brokenOffMs + 1], ...fast('.3'), ['Enter', 5]] as const;
  const { outcomes, held } = typed([...broken, ...fast('-12.3'), ['Enter', 5]]);
  expect(outcomes.map(({ is, text }) => [is, text])).toEqual([
    ['void', '-12'],
    ['void', '5.3'],
    ['whole', '-12.3'],
  ]);
  expect(held).toBeNull();
});

test('an end that comes after a pause ends nothing', () => {
  const { outcomes, held } = typed([...fast('12.34'), ['Enter', brokenOffMs + 1]]);
  expect(outcomes).toEqual([{ is: 'void', text: '12.34', why: 'paused' }]);
  expect(held).toBeNull();
});

test('keys that type nothing change nothing; one that edits voids', () => {
  expect(typed([...fast('1'), ['Shift', 5], ...fast('2'), ['Enter', 5]]).outcomes).toMatchObject([
    { is: 'whole', text: '12' },
  ]);
  expect(typed([...fast('12'), ['Backspace', 5]])).toEqual({
    outcomes: [{ is: 'void', text: '12', why: 'other-key' }],
    held: '',
  });
  expect(typed([['Enter', 5]])).toEqual({ outcomes: [], held: null });
});

test('what never ends is let go', () => {
  expect(typed(fast('1'.repeat(41))).outcomes).toMatchObject([{ is: 'void', why: 'too-long' }]);
});
