import { expect, test } from 'vitest';
import type { ToPage } from '../../shared/messages.ts';
import { numbered, sampleHeader, sampleTake } from '../sample-session.ts';
import { receive } from './incoming.ts';
import { initialState, type PageState } from './page-state.ts';

const header = sampleHeader();
const all = numbered([sampleTake(0, 5), sampleTake(1, -3), sampleTake(2, 1)]);

const hello = (events = all.slice(0, 1), seq = events.at(-1)?.seq ?? 0): ToPage => ({
  type: 'hello',
  program: 'test',
  mode: 'serve',
  session: { header, events, seq },
  instruments: [],
  simulated: null,
});
const after = (...messages: ToPage[]): PageState =>
  messages.reduce((state, message) => receive(state, message, 0), initialState);

test('a snapshot and then events come to the same as all of them at once', () => {
  const events: ToPage = { type: 'events', id: header.id, events: all };
  const piecewise = after(hello(), events);
  expect(piecewise.session?.counted).toEqual(after(hello(all)).session?.counted);
  expect(piecewise.session?.seq).toBe(3);
});

test('events that came already, or of another session, change nothing', () => {
  const state = after(hello(all));
  expect(receive(state, { type: 'events', id: header.id, events: all }, 0)).toBe(state);
  expect(receive(state, { type: 'events', id: 'another', events: all }, 0)).toBe(state);
});

test('the stream of readings is not sent, its numbers are counted', () => {
  expect(after(hello(all.slice(0, 1), 40)).session?.seq).toBe(40);
});

test('a new connection keeps what the person points at; another session puts it away', () => {
  const pointing = { ...after(hello()), pointing: { at: 'note' } as const };
  expect(receive(pointing, hello(), 0).pointing.at).toBe('note');
  const other = hello();
  if (other.type === 'hello' && other.session) other.session.header = { ...header, id: 'other' };
  expect(receive(pointing, other, 0).pointing.at).toBe('nothing');
});

test('a refusal stays until a take', () => {
  const error = { code: 'take.unsteady', place: '', message: 'not settled', remedy: 'wait' };
  const refused = receive(after(hello()), { type: 'refused', error }, 0);
  expect(refused.refusal).toEqual(error);
  expect(receive(refused, { type: 'events', id: header.id, events: all.slice(1) }, 0).refusal).toBeNull();
});

test.each([
  ['take.unsteady', { steadiness: 'settling' }, { steadiness: 'steady' }],
  ['take.notReArmed', { armed: false }, { armed: true }],
  ['take.silent', null, {}],
  ['take.state', { state: 'over-range' }, {}],
])('the refusal %s goes when its reason has gone', (code, before, then) => {
  const live = (over: object): ToPage => ({
    type: 'live',
    live: {
      ...{ from: 'L2', m: 0, value: 1, state: 'ok', steadiness: 'steady', mean: 1, spread: 0, trend: 0 },
      ...{ spreadLimit: 1, steadyForMs: 0, armed: true, ...over },
    },
  });
  const error = { code, place: '', message: 'not now', remedy: 'wait' };
  const refused = receive(after(hello()), { type: 'refused', error }, 0);
  const still = before ? receive(refused, live(before), 0) : refused;
  expect(still.refusal).toEqual(error);
  expect(receive(still, live(then), 0).refusal).toBeNull();
});
