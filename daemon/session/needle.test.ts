import { afterEach, describe, expect, test } from 'vitest';
import { type Profile, profileSchema } from '../../protocols/profile.ts';
import { findProfile } from '../../protocols/shipped.ts';
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

const insisted = { do: 'take', by: 'key', insist: true } as const;
const byKey = { do: 'take', by: 'key', insist: false } as const;

/** Readings with a state beside the number, as some instruments go on sending them. */
const stateful: Profile = profileSchema.parse({
  ...structuredClone(findProfile('json-line')),
  line: { baudRate: 9600, dataBits: 8, parity: 'none', stopBits: 1 },
});
const withState = (value: number, state: string) =>
  JSON.stringify({ tilt: { value, unit: 'um/m' }, temperature: 21.5, state });

describe('a reading that is no good', () => {
  test('is never part of a take, and makes none due', async () => {
    const one = await session({ handsFree: true }, { profile: stateful, handsFree: armed });
    await one.stand(withState(12, 'low'), 25);
    expect(one.needle.now.window.samples).toEqual([]);
    expect(one.refused).toEqual([]);
    await one.stand(withState(12, 'ok'), 1);
    expect(one.keeper.session.takes).toEqual([]);
    await expect(one.keeper.obey(byKey)).rejects.toMatchObject({ code: 'take.unsteady' });
    await one.stand(withState(12, 'ok'), 9);
    expect(one.keeper.session.takes.map(({ event }) => event.count)).toEqual([10]);
  });

  test('is no movement, unless it lies beyond the range', async () => {
    const one = await session({ handsFree: true }, { profile: stateful });
    await one.stand(withState(900, 'low'), 3);
    expect(one.needle.now.moved).toBe(false);
    await one.stand('{"tilt":{"value":"over","unit":"um/m"},"temperature":21.5}', 1);
    expect(one.needle.now.moved).toBe(true);
  });

  test('is refused with what helps against it', async () => {
    const one = await session({ handsFree: false }, { profile: stateful });
    await one.stand(withState(12, 'low'), 2);
    await expect(one.keeper.obey(insisted)).rejects.toMatchObject({
      code: 'take.state',
      remedy: 'change its battery',
    });
  });
});

describe('a break of the stream', () => {
  test('empties the window', async () => {
    const one = await session({ handsFree: false });
    await one.stand('+12.0', 14);
    one.pullCable();
    await settled();
    expect(one.needle.now).toMatchObject({ flowing: false, window: { samples: [] } });
    await one.plugCable();
    await one.stand('+12.0', 1);
    expect(one.needle.now.flowing).toBe(true);
    expect(one.needle.now.window.samples).toHaveLength(1);
  });

  test('spends: nobody knows what became of the instrument meanwhile', async () => {
    const one = await session({ handsFree: true }, { handsFree: armed });
    one.pullCable();
    await one.stand('+12.0', 1);
    await one.plugCable();
    await one.stand('+12.0', 3);
    one.pullCable();
    await one.plugCable();
    await one.stand('+12.0', 20);
    expect(one.keeper.session.takes).toEqual([]);
    await expect(one.keeper.obey(byKey)).rejects.toMatchObject({ code: 'take.notReArmed' });
  });

  test('is not undone by a reading from before it that was still being written', async () => {
    const one = await session({ handsFree: false });
    await one.stand('+12.0', 14);
    one.hold();
    one.say('+900.0');
    one.pullCable();
    one.release();
    await settled();
    expect(one.needle.now).toMatchObject({
      flowing: false,
      armed: false,
      moved: false,
      window: { samples: [] },
    });
    await expect(one.keeper.obey(insisted)).rejects.toMatchObject({ code: 'take.silent' });
  });

  test('leaves a take spent that fails while the cable is out', async () => {
    const one = await session({ handsFree: false });
    await one.stand('+12.0', 14);
    one.hold();
    one.full(true);
    const taking = one.keeper.obey(byKey);
    await settled();
    one.pullCable();
    one.release();
    await expect(taking).rejects.toMatchObject({ code: 'recording.full' });
    expect(one.needle.now.armed).toBe(false);
  });
});

test('a reading that is not on record is not shown', async () => {
  const one = await session({ handsFree: false });
  const shown: (number | null)[] = [];
  one.needle.live$.subscribe(({ value }) => shown.push(value));
  await one.stand('+12.0', 1);
  one.hold();
  one.say('+13.0');
  await settled();
  expect(shown).toEqual([12]);
  one.release();
  await settled();
  expect(shown).toEqual([12, 13]);
  one.full(true);
  await one.stand('+14.0', 1);
  expect(shown).toEqual([12, 13]);
  expect(one.needle.now.window.samples).toHaveLength(2);
});

test('a take that could not be kept leaves things as they were before it', async () => {
  const one = await session({ handsFree: false });
  await one.stand('+12.0', 14);
  await one.keeper.obey(byKey);
  one.full(true);
  await expect(one.keeper.obey(insisted)).rejects.toMatchObject({ code: 'recording.full' });
  expect(one.needle.now.armed).toBe(false);
});

describe('another unit', () => {
  test('alarms until it is switched back, and both are on record', async () => {
    const one = await session({ handsFree: false });
    await one.stand('+12.0', 14);
    await one.stand('+0.012mm/m', 1);
    expect(one.keeper.session.unitAlarm).toBe('mm/m');
    await one.stand('+12.0um/m', 14);
    expect(one.keeper.session.unitAlarm).toBeNull();
    await one.keeper.obey(byKey);
    expect(one.events.filter(({ type }) => type === 'unit')).toMatchObject([
      { unit: 'mm/m', acknowledged: false },
      { unit: 'um/m', acknowledged: false },
    ]);
  });

  test('alarms although the disk was full when it was switched', async () => {
    const one = await session({ handsFree: false });
    await one.stand('+12.0', 14);
    one.full(true);
    await one.stand('+0.012mm/m', 1);
    one.full(false);
    await one.stand('+0.012mm/m', 14);
    expect(one.keeper.session.unitAlarm).toBe('mm/m');
    await expect(one.keeper.obey(byKey)).rejects.toMatchObject({ code: 'take.unitChanged' });
  });
});

describe('an instrument with a button of its own', () => {
  const pressing = () =>
    session(
      { handsFree: false },
      { profile: { ...findProfile('line-decimal'), talk: { kind: 'by-button' } } },
    );

  test('takes once when the same frame comes again within half a second, and says so', async () => {
    const one = await pressing();
    // 100 ms between them.
    await one.stand('+12.0', 3);
    expect(one.keeper.session.takes).toHaveLength(1);
    expect(one.refused.map(({ code }) => code)).toEqual(['take.bounced', 'take.bounced']);
    // All that came is on record.
    expect(one.events.filter(({ type }) => type === 'reading')).toHaveLength(3);
  });

  test('takes another reading, and the same one later', async () => {
    const one = await pressing();
    await one.stand('+12.0', 1);
    await one.stand('+12.1', 1);
    one.rest(501);
    await one.stand('+12.1', 1);
    expect(one.keeper.session.takes.map(({ event }) => event.value)).toEqual([12, 12.1, 12.1]);
    expect(one.refused).toEqual([]);
  });
});
