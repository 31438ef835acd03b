import { Instrument } from '../../daemon/instruments/instrument.ts';
import { MadePort } from '../../daemon/ports/made-port.ts';
import { Needle } from '../../daemon/session/needle.ts';
import { bytesOf } from '../../protocols/bytes.ts';
import { type Profile, profileSchema } from '../../protocols/profile.ts';
import { spent } from '../../shared/live/hands-free.ts';
import type { EventOf, Header } from '../../shared/session/events.ts';
import { instrumentsOf } from '../../shared/session/instruments.ts';
import type { InstrumentSetup } from '../../shared/session/setup.ts';

/** Longest delay of a timer: a recording that is read is never silent. */
const neverMs = 2 ** 31 - 1;

/**
 * The level of a recording, speaking once more through the same frames, decoder and steadiness as it did
 * when it was recorded: what a replay in the page is held against.
 */
export class ReplayedLevel {
  readonly instrument: Instrument;
  readonly needle: Needle;
  readonly #port: MadePort;
  readonly #delimiter: string;

  private constructor(header: Header, setup: InstrumentSetup, copy: Profile) {
    const { bootMs: _, ...line } = copy.line;
    const everyMs = 'everyMs' in copy.talk ? copy.talk.everyMs : neverMs;
    const profile: Profile = {
      ...copy,
      line,
      talk: { kind: 'periodic', everyMs, silentAfterMs: neverMs },
    };
    this.#delimiter = copy.frame.ends === 'delimiter' ? bytesOf(copy.frame.delimiter) : '';
    this.#port = new MadePort(`recording ${header.id}`);
    this.instrument = new Instrument(setup.name, profile, this.#port);
    // Nothing is recorded in a replay: a reading only takes its way to the needle.
    this.needle = new Needle(
      this.instrument,
      setup,
      async (event, stamp) => ({ ...event, ...stamp, seq: 1 }),
      spent,
    );
  }

  /** Every instrument of a recording but those whose readings were typed, or whose profile is of an unknown form. */
  static async allOf(header: Header): Promise<ReplayedLevel[]> {
    const { profile, otherProfiles = [], setup } = header;
    const levels = await Promise.all(
      instrumentsOf(setup).map((one, k) =>
        ReplayedLevel.#of(header, one, k === 0 ? profile : otherProfiles[k - 1]),
      ),
    );
    return levels.filter((level) => level !== null);
  }

  static async #of(header: Header, setup: InstrumentSetup, profile: unknown): Promise<ReplayedLevel | null> {
    const copy = profileSchema.safeParse(profile);
    if (!copy.success) return null;
    const level = new ReplayedLevel(header, setup, copy.data);
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
