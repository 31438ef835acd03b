import { expect, test } from 'vitest';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { fold } from '../../shared/session/fold.ts';
import type { SetupInput } from '../../shared/session/setup.ts';
import {
  back,
  feet,
  headerOf,
  numbered,
  sampleSession,
  sampleTake,
  takeAt,
  walkBack,
} from '../sample-session.ts';
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

const um = { name: 'D', source: 'cable', port: 'p', profile: 'sum-frame', unit: 'um' } as const;
const after = (setup: SetupInput, count: number) => {
  const header = headerOf({ ...setup, instrument: um });
  const places = fold(header, []).placements.slice(0, count);
  return fold(header, numbered(places.map((place) => takeAt(place, 1))));
};

test.each([
  ['straightedge', 11, 'Turn the straightedge over, set the tip on F0', 'Straightedge, turned over'],
  ['square', 4, 'Turn the square round, set the tip on U0', 'Square, turned round'],
  ['bar', 4, 'Turn the spindle half round, set the tip on T0', 'Top of the bar, half turned'],
] as const)('half way through a %s it is turned, and told so', (kind, count, what, run) => {
  const sentence = nextSentence(after(demoSetups[kind], count), null);
  expect(sentence.what).toBe(what);
  expect(sentence.context).toMatch(new RegExp(`^${run}: reading 1 of ${count}\\.$`));
});

test('pins are put in, a typed size is measured over or between them', () => {
  expect(nextSentence(after(demoSetups.dovetail, 0), null).what).toBe('Put the pins in at D0');
  const typed = { ...um, source: 'typed' } as const;
  const header = headerOf({ ...demoSetups.dovetail, form: 'female', instrument: typed });
  expect(nextSentence(fold(header, []), null).what).toBe('Measure between the pins at D0');
});

test('a plate says which line of how many, and where the next one begins', () => {
  const header = headerOf(demoSetups.plate);
  expect(nextSentence(fold(header, []), null)).toEqual({
    what: 'Next line: set the level on NL – P1',
    context: 'Line 1 of 8. Diagonal, near left to far right, going out: reading 1 of 10. Plus end to FR.',
  });
});

test('across a bed the plus end points to the rear way', () => {
  const header = headerOf(demoSetups.bed);
  const session = fold(header, numbered([{ type: 'aim', place: { run: 'across', at: ['F0', 'R0'] } }]));
  expect(nextSentence(session, null).context).toMatch(/Plus end to the rear way\.$/);
});
