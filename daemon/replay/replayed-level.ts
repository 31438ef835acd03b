import { profileSchema } from '../../protocols/profile.ts';
import { spent } from '../../shared/live/hands-free.ts';
import type { EventOf, Header } from '../../shared/session/events.ts';
import { Instrument } from '../instruments/instrument.ts';
import { MadePort } from '../ports/made-port.ts';
import { Needle } from '../session/needle.ts';

/** Longest delay of a timer; a recording that is paused is not silent. */
const neverMs = 2 ** 31 - 1;

/**
 * The level of a recording, speaking once more through the same frames, decoder and steadiness as it did
 * when it was recorded. Null when the readings were typed.
 */
export class ReplayedLevel {
  readonly instrument: Instrument;
  readonly needle: Needle;
  readonly #port: MadePort;
  readonly #delimiter: string;

  private constructor(header: Header, profileData: unknown) {
    const copy = profileSchema.parse(profileData);
    const everyMs = copy.talk.everyMs;
    const profile = {
      ...copy,
      settleMs: 0,
      talk: { kind: 'periodic' as const, everyMs, silentAfterMs: neverMs },
    };
    this.#delimiter = profile.frame.delimiter;
    this.#port = new MadePort(`recording ${header.id}`);
    this.instrument = new Instrument(header.setup.instrument.name, profile, this.#port);
    // Nothing is recorded in a replay: a reading only takes its way to the needle.
    this.needle = new Needle(
      this.instrument,
      header.setup.instrument,
      async (event, stamp) => ({ ...event, ...stamp, seq: 1 }),
      spent,
    );
  }

  static async of(header: Header): Promise<ReplayedLevel | null> {
    if (header.profile === undefined) return null;
    const level = new ReplayedLevel(header, header.profile);
    await level.instrument.start();
    // The first frame after opening is never trusted; an empty one may be lost.
    level.#port.feed(level.#delimiter, { t: header.t, m: 0 });
    return level;
  }

  say({ raw, t, m }: EventOf<'reading'>): void {
    this.#port.feed(raw + this.#delimiter, { t, m });
  }

  async stop(): Promise<void> {
    this.needle.stop();
    await this.instrument.stop();
  }
}
