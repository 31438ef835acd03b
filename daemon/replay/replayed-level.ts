import { bytesOf } from '../../protocols/bytes.ts';
import { type Profile, profileSchema } from '../../protocols/profile.ts';
import { spent } from '../../shared/live/hands-free.ts';
import type { EventOf, Header } from '../../shared/session/events.ts';
import { Instrument } from '../instruments/instrument.ts';
import { MadePort } from '../ports/made-port.ts';
import { Needle } from '../session/needle.ts';

/** Longest delay of a timer; a recording that is paused is not silent. */
const neverMs = 2 ** 31 - 1;

/**
 * The level of a recording, speaking once more through the same frames, decoder and steadiness as it did
 * when it was recorded.
 */
export class ReplayedLevel {
  readonly instrument: Instrument;
  readonly needle: Needle;
  readonly #port: MadePort;
  readonly #delimiter: string;

  private constructor(header: Header, copy: Profile) {
    const { bootMs: _, ...line } = copy.line;
    const everyMs = 'everyMs' in copy.talk ? copy.talk.everyMs : neverMs;
    const profile: Profile = {
      ...copy,
      line,
      talk: { kind: 'periodic', everyMs, silentAfterMs: neverMs },
    };
    this.#delimiter = copy.frame.ends === 'delimiter' ? bytesOf(copy.frame.delimiter) : '';
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

  /** Null when the readings were typed, or when the copy of the profile is of a form that is not known. */
  static async of(header: Header): Promise<ReplayedLevel | null> {
    const copy = profileSchema.safeParse(header.profile);
    if (!copy.success) return null;
    const level = new ReplayedLevel(header, copy.data);
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
