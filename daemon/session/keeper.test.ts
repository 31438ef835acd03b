import { afterEach, describe, expect, test } from 'vitest';
import { armed } from '../../shared/live/hands-free.ts';
import { type GatedSession, gatedSession, settled } from '../../tests/tools/gated-session.ts';

const started: GatedSession[] = [];
async function session(...how: Parameters<typeof gatedSession>): Promise<GatedSession> {
  const one = await gatedSession(...how);
  started.push(one);
  return one;
}
afterEach(async () => {
  for (const one of started.splice(0)) await one.stop();
});

/** One more frame makes a take due. */
async function almostDue(): Promise<GatedSession> {
  const one = await session({ handsFree: true }, { handsFree: armed });
  await one.stand('+12.0', 9);
  expect(one.keeper.session.takes).toEqual([]);
  return one;
}
const typesOf = ({ events }: GatedSession) => events.map(({ type }) => type);
const takesOf = ({ keeper }: GatedSession) => keeper.session.takes.map(({ event }) => event.place.at.join());

describe('without a hand', () => {
  test('takes once when steady after a movement, however many readings come while it is written', async () => {
    const one = await almostDue();
    one.hold();
    const noting = one.keeper.obey({ do: 'note', text: 'x' });
    for (let k = 0; k < 3; k += 1) one.say('+12.0');
    one.release();
    await noting;
    await settled();
    expect(takesOf(one)).toEqual(['F0,F1']);
    expect(one.refused).toEqual([]);
  });

  test('takes nothing where it lay at the start; a key may', async () => {
    const one = await session({ handsFree: true });
    await one.stand('+12.0', 30);
    expect(takesOf(one)).toEqual([]);
    await one.keeper.obey({ do: 'take', by: 'key', insist: false });
    expect(takesOf(one)).toEqual(['F0,F1']);
  });

  test('takes the first place after it was moved there', async () => {
    const one = await session({ handsFree: true });
    await one.stand('+12.0', 12);
    await one.stand('+900.0', 2);
    await one.stand('+14.0', 12);
    expect(one.keeper.session.takes.map(({ event }) => event.value)).toEqual([14]);
  });

  test.each([
    ['finish', (one: GatedSession) => one.keeper.obey({ do: 'finish' }), 'end'],
    ['put aside', (one: GatedSession) => one.keeper.setAside(), 'aside'],
  ])('takes nothing that became due just before the person said %s', async (_, last, type) => {
    const one = await almostDue();
    one.hold();
    one.say('+12.0');
    const done = last(one);
    one.release();
    await done;
    await settled();
    expect(typesOf(one).at(-1)).toBe(type);
    expect(takesOf(one)).toEqual([]);
    expect(one.refused).toEqual([]);
  });

  test('takes nothing that became due just before it was switched off', async () => {
    const one = await almostDue();
    one.hold();
    one.say('+12.0');
    const off = one.keeper.obey({ do: 'hands-free', on: false });
    one.release();
    await off;
    await settled();
    expect(takesOf(one)).toEqual([]);
  });

  const elsewhere = { run: 'front way out', at: ['F5', 'F6'] as ['F5', 'F6'] };

  test('never files the reading of one place under another that was chosen while it stood', async () => {
    for (const chosenFirst of [true, false]) {
      const one = await almostDue();
      one.hold();
      if (!chosenFirst) one.say('+12.0');
      const aiming = one.keeper.obey({ do: 'aim', place: elsewhere });
      if (chosenFirst) one.say('+12.0');
      one.release();
      await aiming;
      await one.stand('+12.0', 20);
      expect(takesOf(one)).toEqual([]);
      await one.stand('+900.0', 2);
      await one.stand('+14.0', 12);
      expect(takesOf(one)).toEqual(['F5,F6']);
    }
  });

  test('never files the reading of a skipped place under the next one', async () => {
    const one = await almostDue();
    const place = one.keeper.session.next!;
    await one.keeper.obey({ do: 'skip', place, reason: 'metal is damaged there' });
    await one.stand('+12.0', 20);
    expect(takesOf(one)).toEqual([]);
  });
});

test('commands are obeyed one after the other: a second take finds the first one made', async () => {
  const one = await session({ handsFree: false });
  await one.stand('+12.0', 14);
  const take = { do: 'take', by: 'key', insist: false } as const;
  one.hold();
  const both = Promise.allSettled([one.keeper.obey(take), one.keeper.obey(take)]);
  await settled();
  one.release();
  expect((await both).map(({ status }) => status)).toEqual(['fulfilled', 'rejected']);
  expect(takesOf(one)).toEqual(['F0,F1']);
});

test('nothing is recorded behind the end', async () => {
  const one = await session({ handsFree: false });
  await one.keeper.obey({ do: 'finish' });
  await expect(one.keeper.obey({ do: 'note', text: 'late' })).rejects.toMatchObject({
    code: 'command.refused',
    place: 'session',
  });
  await expect(one.keeper.record({ type: 'note', text: 'late' })).rejects.toMatchObject({
    code: 'command.refused',
  });
  expect(typesOf(one)).toEqual(['end']);
});
