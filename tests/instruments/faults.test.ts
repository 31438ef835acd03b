import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { Instrument } from '../../daemon/instruments/instrument.ts';
import { MadePort } from '../../daemon/ports/made-port.ts';
import { stampNow } from '../../daemon/ports/port.ts';
import { type Fault, faults } from '../../daemon/simulate/faults.ts';
import { seededRandom } from '../../daemon/simulate/random.ts';
import { Speaker } from '../../daemon/simulate/speaker.ts';
import type { ChannelReading } from '../../protocols/decode.ts';
import type { Profile } from '../../protocols/profile.ts';
import { converted } from '../../protocols/quantities.ts';
import { shippedProfiles } from '../../protocols/shipped.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** Both ends of a cable in this process. */
function cable(): { atInstrument: MadePort; atDaemon: MadePort } {
  const atInstrument: MadePort = new MadePort('instrument', (bytes) => atDaemon.feed(bytes, stampNow()));
  const atDaemon: MadePort = new MadePort('daemon', (bytes) => atInstrument.feed(bytes, stampNow()));
  return { atInstrument, atDaemon };
}

/** Whether a reading is one of those that were meant, to the last digit that is sent. */
function isMeant(profile: Profile, found: ChannelReading, meant: readonly ChannelReading[]): boolean {
  const { quantity, unit } = profile.channels.find(({ name }) => name === found.channel)!;
  return meant.some((wanted) => {
    if (wanted.channel !== found.channel || wanted.value === null || found.value === null) return false;
    const value = converted(quantity, found.value, found.unit ?? unit, unit);
    const lastDigit = 10 ** -(found.decimals ?? 7);
    const rounding = converted(quantity, lastDigit, found.unit ?? unit, unit) / 2;
    return Math.abs(value - wanted.value) <= rounding + 1e-6 * Math.abs(wanted.value);
  });
}

// A bit that flips unseen is counted elsewhere: without a checksum nothing can tell it.
const told = faults.filter((fault) => fault !== 'flip');

test.each(shippedProfiles.map((profile) => [profile.id, profile] as const))(
  '%s: silence, garbage, halves, bursts, other units and over-range make no false reading',
  async (id, profile) => {
    const { atInstrument, atDaemon } = cable();
    const instrument = new Instrument(id, profile, atDaemon);
    const meant: ChannelReading[] = [];
    const heard: ChannelReading[] = [];
    const gaps: string[] = [];
    const planted: Fault[] = [];
    let discarded = 0;
    let silent = false;
    instrument.readings$.subscribe(({ decoded }) => heard.push(decoded));
    instrument.gaps$.subscribe(({ is }) => gaps.push(is));
    instrument.state$.subscribe((state) => {
      silent ||= state.silent;
    });
    instrument.discarded$.subscribe(() => {
      discarded += 1;
    });

    const random = seededRandom(9);
    const speaker = new Speaker(profile, atInstrument, {
      faults: told,
      reads: () => {
        const said = profile.channels.map(({ name, range }): ChannelReading => {
          const value =
            (random.even() < 0.5 ? -1 : 1) * (0.2 + random.even()) * Math.min(20, (range?.[1] ?? 20) / 2);
          return { channel: name, value: Number(value.toFixed(2)), state: 'ok', decimals: 2 };
        });
        meant.push(...said);
        return said;
      },
    });
    speaker.said$.subscribe(({ fault }) => fault && planted.push(fault));

    await instrument.start();
    await speaker.start();
    while (planted.length < told.length + 3) await vi.advanceTimersByTimeAsync(1000);
    await vi.advanceTimersByTimeAsync(3 * 5000);

    expect(heard.length).toBeGreaterThan(100);
    for (const reading of heard) {
      if (reading.state === 'over-range') expect(reading.value).toBeNull();
      else expect(isMeant(profile, reading, meant), JSON.stringify(reading)).toBe(true);
    }
    expect(discarded).toBeGreaterThan(0);
    expect(silent).toBe(profile.talk.kind !== 'by-button');
    expect(gaps.slice(0, 2)).toEqual(profile.talk.kind === 'by-button' ? [] : ['lost', 'back']);
    await speaker.stop();
    await instrument.stop();
  },
);
