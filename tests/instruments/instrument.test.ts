import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { FormCutter } from '../../daemon/instruments/form-cutter.ts';
import { FrameCutter } from '../../daemon/instruments/frame-cutter.ts';
import { Instrument } from '../../daemon/instruments/instrument.ts';
import { MadePort } from '../../daemon/ports/made-port.ts';
import { stampNow } from '../../daemon/ports/port.ts';
import { Needle } from '../../daemon/session/needle.ts';
import { encode } from '../../protocols/encode.ts';
import { type Profile, profileSchema } from '../../protocols/profile.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { armed } from '../../shared/live/hands-free.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import { instrumentSchema } from '../../shared/session/setup.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** An instrument on a port, with everything that it tells and everything that it was asked. */
async function onPort(profile: Profile) {
  const asked: string[] = [];
  const port = new MadePort('made', (bytes) => asked.push(bytes));
  const instrument = new Instrument('level', profile, port);
  const heard: string[] = [];
  instrument.readings$.subscribe(({ decoded }) => heard.push(`${decoded.channel} ${decoded.value}`));
  instrument.discarded$.subscribe(({ why }) => heard.push(why));
  await instrument.start();
  return { asked, heard, instrument, feed: (bytes: string) => port.feed(bytes, stampNow()) };
}

describe('an instrument', () => {
  test('that starts up is neither asked nor believed until it has', async () => {
    const { line, ...rest } = findProfile('ask-decimal');
    const { asked, heard, feed, instrument } = await onPort({ ...rest, line: { ...line, bootMs: 1000 } });
    feed('\rL +12.40 um/m\r');
    await vi.advanceTimersByTimeAsync(999);
    expect(asked).toEqual([]);
    expect(heard).toEqual(['the instrument is starting up']);
    await vi.advanceTimersByTimeAsync(1500);
    expect(asked.length).toBeGreaterThan(5);
    // Its silence is counted from then on.
    expect(instrument.state$.value.silent).toBe(false);
    feed('L +12.40 um/m\r');
    expect(heard.at(-1)).toBe('tilt 12.4');
    await instrument.stop();
  });

  test('with several channels gives a reading of each, in the order of its profile', async () => {
    const { heard, feed, instrument } = await onPort(findProfile('labelled-channels'));
    feed('\r\nX+0012.4 YOVER T+21.5\r\n');
    expect(heard).toEqual(['x 12.4', 'y null', 'temperature 21.5']);
    await instrument.stop();
  });

  test('that sends what its profile can’t read is silent, and says that bytes come', async () => {
    const { feed, instrument } = await onPort(findProfile('line-decimal'));
    const gaps: string[] = [];
    instrument.gaps$.subscribe(({ why }) => gaps.push(why));
    feed('\r\n+00012.4\r\n');
    const state = () => instrument.state$.value;
    for (let k = 0; k < 20; k += 1) {
      await vi.advanceTimersByTimeAsync(100);
      feed('\x80\xf8\x07');
    }
    expect(state()).toMatchObject({ silent: true, unread: true });
    expect(gaps).toEqual(['nothing that could be read came for 1.5 s']);
    // Then nothing comes at all.
    await vi.advanceTimersByTimeAsync(5000);
    expect(state()).toMatchObject({ silent: true, unread: false });
    feed('\x80\xf8\x07');
    await vi.advanceTimersByTimeAsync(1500);
    expect(state()).toMatchObject({ silent: true, unread: true });
    feed('\r\n+00012.4\r\n+00012.4\r\n');
    expect(state()).toMatchObject({ silent: false, unread: false });
    await instrument.stop();
  });

  test('that speaks by its button is never silent', async () => {
    const { instrument } = await onPort(findProfile('decimal-unit-status'));
    await vi.advanceTimersByTimeAsync(3_600_000);
    expect(instrument.state$.value).toMatchObject({ silent: false, kind: 'by-button' });
    await instrument.stop();
  });
});

describe('the needle', () => {
  async function needleOf(id: string, level: { unit: string; channel?: string }) {
    const profile = findProfile(id);
    const { feed, instrument } = await onPort(profile);
    const events: NewEvent[] = [];
    const parsed = instrumentSchema.parse({ name: 'level', source: 'cable', ...level });
    const record = async (event: NewEvent) => {
      events.push(event);
      return { ...event, seq: events.length, t: 0, m: 0 };
    };
    const needle = new Needle(instrument, parsed, record, armed);
    return { profile, feed, events, needle };
  }

  test('reads the first slope, or the channel that the set-up names', async () => {
    const first = await needleOf('labelled-channels', { unit: 'um/m' });
    first.feed('\r\nX+0012.4 Y-0003.1 T+21.5\r\n');
    expect(first.events).toMatchObject([{ type: 'reading', value: 12.4 }]);
    const named = await needleOf('labelled-channels', { unit: 'um/m', channel: 'y' });
    named.feed('\r\nX+0012.4 Y-0003.1 T+21.5\r\n');
    expect(named.events).toMatchObject([{ type: 'reading', value: -3.1 }]);
  });

  test('counts in the unit of the set-up when the profile knows what the instrument speaks', async () => {
    const { profile, feed, events } = await needleOf('modbus-int16', { unit: 'arcsec' });
    feed(encode(profile, [{ channel: 'x', value: 0.01, state: 'ok' }]));
    expect(events).toHaveLength(1);
    const [event] = events;
    // 0.01 degree is 36 seconds of arc.
    expect(event?.type === 'reading' && event.value).toBeCloseTo(36, 9);
  });

  test('takes the unit of the set-up when neither line nor profile can tell', async () => {
    const { feed, events } = await needleOf('line-decimal', { unit: 'arcsec' });
    feed('\r\n+0012.4\r\n');
    expect(events).toMatchObject([{ type: 'reading', value: 12.4 }]);
  });

  test('refuses an instrument, or a channel, that does not read in the unit of the set-up', async () => {
    await expect(needleOf('sum-frame', { unit: 'um/m' })).rejects.toThrow(/sum-frame: tells nothing in um.m/);
    await expect(needleOf('labelled-channels', { unit: 'um/m', channel: 'temperature' })).rejects.toThrow(
      /has no channel "temperature" that reads in um.m; choose one of x, y/,
    );
  });
});

describe('cutters', () => {
  test('a line that broke off neither joins what comes after a pause, nor is its rest believed', () => {
    const heard: string[] = [];
    const frame = { delimiter: '\r\n', longest: 32 };
    const cutter = new FrameCutter(
      frame,
      { t: 0, m: 0 },
      {
        frame: (text) => heard.push(text),
        discarded: (text, why) => heard.push(`${text} (${why})`),
      },
    );
    cutter.push(Buffer.from('\r\n12'), { t: 0, m: 10 });
    cutter.push(Buffer.from('34.5\r\n6\r\n'), { t: 0, m: 2000 });
    expect(heard).toEqual(['12 (broke off)', '34.5 (the rest of a frame that broke off)', '6']);
  });

  test('with a checksum the first frame needs no delimiter before it', () => {
    const heard: string[] = [];
    const frame = { delimiter: '\r\n', longest: 32 };
    const listener = { frame: (text: string) => heard.push(text), discarded: () => {} };
    new FrameCutter(frame, { t: 0, m: 0 }, listener, true).push(Buffer.from('$A*41\r\n'), { t: 0, m: 0 });
    expect(heard).toEqual(['$A*41']);
  });

  test('a pause ends a frame without waiting for the next one, and the reading is as old as its bytes', async () => {
    const profile = profileSchema.parse({
      ...findProfile('modbus-float'),
      frame: { ends: 'silence', gapMs: 20, longest: 20 },
    });
    const heard: [string, number][] = [];
    const cutter = new FormCutter(profile, {
      frame: (text, { m }) => heard.push([text, m]),
      discarded: () => {},
    });
    const bytes = encode(profile, []);
    const stamp = stampNow();
    cutter.push(Buffer.from(bytes, 'latin1'), stamp);
    expect(heard).toEqual([]);
    await vi.advanceTimersByTimeAsync(25);
    expect(heard).toEqual([[bytes, stamp.m]]);
  });
});
