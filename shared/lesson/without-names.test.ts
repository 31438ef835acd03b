import { expect, test } from 'vitest';
import { withoutNames } from './without-names.ts';

test('neither who measured nor who proved the instruments is left, and their days are', () => {
  const proved = { provedOn: '2026-01-01 by Anna Q' };
  const setup = {
    operator: 'Anna Q',
    instrument: { name: 'L2', ...proved },
    others: [{ name: 'R1', ...proved }],
  };
  const lines = [
    { recording: 1, setup, h: 'x' },
    { type: 'conditions', operator: 'Anna Q', partC: 20, h: 'y' },
  ];
  const shared = withoutNames(lines.map((line) => `${JSON.stringify(line)}\n`).join(''));
  expect(shared.join('\n')).not.toContain('Anna');
  expect(JSON.parse(shared[0]!).setup).toEqual({
    operator: '',
    instrument: { name: 'L2', provedOn: '2026-01-01' },
    others: [{ name: 'R1', provedOn: '2026-01-01' }],
  });
});
