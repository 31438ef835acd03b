import { expect, test } from 'vitest';
import { back, feet, sampleSession, sampleTake, walkBack } from '../sample-session.ts';
import { nextSentence } from './sentence.ts';

const six = [0, 1, 2, 3, 4, 5];

test('the next place, and where that is in the walk', () => {
  expect(nextSentence(sampleSession([sampleTake(0, 1)]), null)).toEqual({
    what: 'Set the level on F1 – F2',
    context: 'Front way, going out: reading 2 of 6. Plus end to the tail end.',
  });
});

test('while the level has not moved since the take, it is to be moved', () => {
  const session = sampleSession([sampleTake(0, 1)]);
  expect(nextSentence(session, feet(0)).what).toBe('Move the level on to F1 – F2');
});

test('at the far end the same feet are read once more, on the way back', () => {
  const session = sampleSession([...six.map((k) => sampleTake(k, 1)), walkBack]);
  expect(nextSentence(session, feet(5)).what).toBe('Lift the level, set it on F5 – F6 again');
});

test('a level that is turned for the walk back is told so once, and its plus end with it', () => {
  const out = six.map((k) => sampleTake(k, 1));
  const turned = sampleSession(out, { back: 'turned' });
  expect(nextSentence(turned, null)).toEqual({
    what: 'Turn the level end for end, set it on F5 – F6',
    context: 'Front way, coming back, level turned: reading 1 of 6. Plus end to the headstock end.',
  });
  const later = sampleSession([...out, sampleTake(5, 1, back)], { back: 'turned' });
  expect(nextSentence(later, null).what).toBe('Set the level on F4 – F5');
});

test('a place that is read already is read again', () => {
  const session = sampleSession([sampleTake(0, 1), { type: 'aim', place: feet(0) }]);
  expect(nextSentence(session, null).what).toBe('Read F0 – F1 again');
});

test('when all is read, what is left to do', () => {
  const out = six.map((k) => sampleTake(k, 1));
  expect(nextSentence(sampleSession(out), null).what).toBe('The way out is read');
  const both = [...out, walkBack, ...six.map((k) => sampleTake(k, 1, back))];
  expect(nextSentence(sampleSession(both), null).what).toBe('Out and back are read');
});
