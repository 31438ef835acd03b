import { type ChannelReading, decode } from '../../protocols/decode.ts';
import { hintFor } from '../../protocols/hint.ts';
import type { Profile } from '../../protocols/profile.ts';
import type { Stamp } from '../../shared/session/events.ts';
import type { Cutter } from './cutter.ts';
import { cutterFor } from './cutter-for.ts';

/** How well a profile explains what came. */
export interface Fit {
  readonly profile: Profile;
  /** Frames that it understood. */
  readonly frames: number;
  /** Bytes of these frames, their delimiters left out. */
  readonly bytes: number;
  /** Pieces that it did not. */
  readonly discarded: number;
  /** What the last frame would read. */
  readonly last: readonly ChannelReading[] | null;
}

/** Newest bytes that are kept to give a hint by. */
const keptBytes = 4096;

/** Getting to know an instrument: the same bytes read by every profile at once. */
export class Acquaintance {
  readonly #fitters: readonly Fitter[];
  #kept = '';

  constructor(profiles: readonly Profile[], stamp: Stamp) {
    this.#fitters = profiles.map((profile) => new Fitter(profile, stamp));
  }

  push(bytes: Buffer, stamp: Stamp): void {
    this.#kept = (this.#kept + bytes.toString('latin1')).slice(-keptBytes);
    for (const { cutter } of this.#fitters) cutter.push(bytes, stamp);
  }

  /** The profiles that understood something, the one that understood the most first. */
  get fits(): readonly Fit[] {
    const fits = this.#fitters.map(({ fit }) => fit).filter(({ frames }) => frames > 0);
    return fits.sort((a, b) => b.frames - b.discarded - (a.frames - a.discarded));
  }

  /** What helps when no frame fits; null when one does. */
  get hint(): string | null {
    return this.fits.length > 0 ? null : hintFor(this.#kept);
  }
}

class Fitter {
  readonly cutter: Cutter;
  readonly #profile: Profile;
  #frames = 0;
  #bytes = 0;
  #discarded = 0;
  #last: readonly ChannelReading[] | null = null;

  constructor(profile: Profile, stamp: Stamp) {
    this.#profile = profile;
    this.cutter = cutterFor(profile, stamp, {
      frame: (raw) => this.#frame(raw),
      discarded: () => {
        this.#discarded += 1;
      },
    });
  }

  get fit(): Fit {
    return {
      profile: this.#profile,
      frames: this.#frames,
      bytes: this.#bytes,
      discarded: this.#discarded,
      last: this.#last,
    };
  }

  #frame(raw: string): void {
    const decoding = decode(this.#profile, raw);
    if ('why' in decoding) {
      this.#discarded += 1;
      return;
    }
    this.#frames += 1;
    this.#bytes += raw.length;
    this.#last = decoding.ok;
  }
}
