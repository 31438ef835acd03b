import fc from 'fast-check';
import { expect, test } from 'vitest';
import { changeSchema } from '../../shared/job/document.ts';
import { jobText, readJobText } from './job-text.ts';

const head = { job: 1, part: 'bed "03"', owner: 'é' } as const;
const changes = ['first', 'second, with a "quote" and a , comma', '],"count":2'].map((text, k) =>
  changeSchema.parse({ no: k + 1, at: '2026-03-02T08:00:00Z', by: 'a', change: 'note', text }),
);

test.each([0, 1, 3])('what is written is read back, with %i changes, and is plain JSON', (count) => {
  const { text, link } = jobText(head, changes.slice(0, count));
  expect(readJobText(Buffer.from(text))).toEqual({
    document: { head, changes: changes.slice(0, count), link },
    problems: [],
  });
  expect(JSON.parse(text)).toMatchObject({ job: 1, changes: changes.slice(0, count), count, link });
});

test('whatever stands in the file, it is read or refused, never thrown at', () => {
  const { text } = jobText(head, changes);
  const lines = text.split('\n');
  const piece = fc.oneof(fc.string(), fc.constantFrom(...lines, '{', '],', '{"job":1', '"h":"'), fc.json());
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 8 }), (pieces) => {
      const { document, problems } = readJobText(Buffer.from(pieces.join('\n')));
      expect(document === null).toBe(problems.length > 0);
    }),
  );
});
