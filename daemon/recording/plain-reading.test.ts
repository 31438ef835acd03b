import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eventSchema } from '../../shared/session/events.ts';
import { parseEvent } from './plain-reading.ts';

const sound = {
  seq: 7,
  t: 1_700_000_000_000,
  m: 12.5,
  type: 'reading',
  from: 'level',
  raw: '+1.0',
  value: 1,
};
const odd = fc.constantFrom<unknown>(
  ...[
    null,
    true,
    '',
    'level',
    0,
    -1,
    0.5,
    1e300,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    8.64e15,
    9e15,
    [],
    {},
  ],
  ...[undefined, 2 ** 53, 'um/m', 'ok', 'over-range', -0],
);
const field = fc.constantFrom('seq', 't', 'm', 'type', 'from', 'raw', 'value', 'unit', 'state', 'h', 'later');

test('judges every event as the schema does', () => {
  fc.assert(
    fc.property(fc.array(fc.tuple(field, odd), { maxLength: 3 }), (changes) => {
      const event = { ...sound, ...Object.fromEntries(changes) };
      const [ours, schema] = [parseEvent(event), eventSchema.safeParse(event)];
      expect(ours.success).toBe(schema.success);
      expect(ours.data).toEqual(schema.data);
    }),
    { numRuns: 2000 },
  );
  for (const value of [null, 1, 'reading', [], undefined]) expect(parseEvent(value).success).toBe(false);
});
