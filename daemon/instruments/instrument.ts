import { BehaviorSubject, Subject } from 'rxjs';
import { bytesOf } from '../../protocols/bytes.ts';
import { type ChannelReading, decode } from '../../protocols/decode.ts';
import type { Profile } from '../../protocols/profile.ts';
import type { WayscribeError } from '../../shared/errors.ts';
import type { InstrumentState } from '../../shared/messages.ts';
import type { Stamp } from '../../shared/session/events.ts';
import { PortLink } from '../ports/link.ts';
import { type PortMaker, stampNow } from '../ports/port.ts';
import type { Cutter } from './cutter.ts';
import { cutterFor } from './cutter-for.ts';

/** What one channel said in one frame that was whole. */
export interface Reading {
  readonly raw: string;
  readonly decoded: ChannelReading;
  readonly stamp: Stamp;
}

/** Bytes that were no frame, one character a byte. */
export interface Discarded {
  readonly raw: string;
  readonly why: string;
  readonly stamp: Stamp;
}

/** The stream stopped (`lost`) or goes on again (`back`). */
export interface Gap {
  readonly is: 'lost' | 'back';
  readonly why: string;
  readonly stamp: Stamp;
}

/**
 * An instrument on a port: from bytes to readings, by its profile alone.
 *
 * A frame gives one reading for each of its channels. Silence is watched: a periodic instrument, or one that does
 * not answer, is `silent` after the time its profile names, and its last value is not a value any more; it is
 * `unread` besides when bytes came that its profile can't read. One that speaks by its own button is never silent.
 */
export class Instrument {
  readonly name: string;
  readonly profile: Profile;
  readonly readings$ = new Subject<Reading>();
  readonly discarded$ = new Subject<Discarded>();
  readonly gaps$ = new Subject<Gap>();
  readonly state$: BehaviorSubject<InstrumentState>;
  readonly #link: PortLink;
  #cutter: Cutter | null = null;
  #asking: NodeJS.Timeout | null = null;
  #silence: NodeJS.Timeout | null = null;
  #waitMs = 0;
  /** Whether bytes came since the last frame, or since its silence was told. */
  #bytesCame = false;
  /** When the instrument has started up, on the monotonic clock, ms. */
  #upAt = Number.NEGATIVE_INFINITY;
  /** True from the first reading until the stream is lost, and again from the next reading. */
  #flowing = false;
  #everFlowed = false;
  #frames = 0;
  #discards = 0;

  constructor(name: string, profile: Profile, maker: PortMaker) {
    this.name = name;
    this.profile = profile;
    this.state$ = new BehaviorSubject<InstrumentState>({
      name,
      port: maker.path,
      profile: profile.id,
      kind: profile.talk.kind === 'on-request' ? 'on-demand' : profile.talk.kind,
      link: 'absent',
      unit: profile.channels[0]!.unit,
      silent: false,
      frames: 0,
      discarded: 0,
    });
    this.#link = new PortLink(maker, profile.line, {
      opened: (stamp) => this.#opened(stamp),
      data: (bytes, stamp) => {
        this.#bytesCame = true;
        this.#cutter?.push(bytes, stamp);
      },
      closed: (stamp) => this.#closed(stamp),
      state: (link, error) => this.#linkState(link, error),
    });
  }

  /** Opens the port and keeps it open; returns after the first try. */
  async start(): Promise<void> {
    await this.#link.start();
  }

  async stop(): Promise<void> {
    this.#quiet();
    await this.#link.stop();
    for (const subject of [this.readings$, this.discarded$, this.gaps$, this.state$]) subject.complete();
  }

  #opened(stamp: Stamp): void {
    this.#bytesCame = false;
    const { talk, line } = this.profile;
    // A made-up stream has a clock of its own, which must not be held against the time of opening.
    this.#upAt = line.bootMs ? stamp.m + line.bootMs : Number.NEGATIVE_INFINITY;
    this.#cutter = cutterFor(this.profile, stamp, {
      frame: (raw, at) => this.#frame(raw, at),
      discarded: (raw, why, at) => this.#discard(raw, why, at),
    });
    if (talk.kind === 'on-request') {
      const request = bytesOf(talk.request);
      this.#asking = setInterval(() => {
        if (stampNow().m >= this.#upAt) this.#link.write(request);
      }, talk.everyMs);
    }
    this.#watch();
  }

  #closed(stamp: Stamp): void {
    this.#quiet();
    this.#cutter?.end(stamp);
    this.#cutter = null;
    this.#lose('the port was lost', stamp);
  }

  #quiet(): void {
    if (this.#asking) clearInterval(this.#asking);
    if (this.#silence) clearTimeout(this.#silence);
    this.#asking = null;
    this.#silence = null;
  }

  #watch(): void {
    const { talk } = this.profile;
    if (talk.kind === 'by-button') return;
    const waitMs = talk.silentAfterMs + Math.max(0, this.#upAt - stampNow().m);
    // The same timer again: this happens at every frame.
    if (this.#silence && this.#waitMs === waitMs) return void this.#silence.refresh();
    if (this.#silence) clearTimeout(this.#silence);
    this.#waitMs = waitMs;
    this.#silence = setTimeout(() => {
      const unread = this.#bytesCame;
      this.#bytesCame = false;
      const { silent, unread: told = false } = this.state$.value;
      if (!silent || told !== unread) this.#change({ silent: true, unread });
      const what = unread ? 'nothing that could be read' : 'nothing';
      this.#lose(`${what} came for ${talk.silentAfterMs / 1000} s`, stampNow());
      this.#silence?.refresh();
    }, waitMs);
  }

  #frame(raw: string, stamp: Stamp): void {
    const early = stamp.m < this.#upAt;
    const decoding = early ? { why: 'the instrument is starting up' } : decode(this.profile, raw);
    if ('why' in decoding) {
      this.#discard(raw, decoding.why, stamp);
      return;
    }
    this.#watch();
    this.#bytesCame = false;
    if (!this.#flowing) {
      this.#flowing = true;
      if (this.#everFlowed) this.gaps$.next({ is: 'back', why: 'readings come again', stamp });
      this.#everFlowed = true;
    }
    // The count alone is not worth a message to every page; it travels with the next change of state.
    this.#frames += 1;
    if (this.state$.value.silent) this.#change({ silent: false, unread: false });
    for (const decoded of decoding.ok) this.readings$.next({ raw, decoded, stamp });
  }

  #discard(raw: string, why: string, stamp: Stamp): void {
    this.#discards += 1;
    this.#change({});
    this.discarded$.next({ raw, why, stamp });
  }

  #lose(why: string, stamp: Stamp): void {
    if (!this.#flowing) return;
    this.#flowing = false;
    this.gaps$.next({ is: 'lost', why, stamp });
  }

  #linkState(link: InstrumentState['link'], error: WayscribeError | null): void {
    const { error: _, ...state } = this.state$.value;
    const sent = error && {
      code: error.code,
      place: error.place,
      message: error.detail,
      remedy: error.remedy,
    };
    this.state$.next({
      ...state,
      ...this.#counts(),
      link,
      silent: false,
      unread: false,
      ...(sent && { error: sent }),
    });
  }

  #change(part: Partial<InstrumentState>): void {
    this.state$.next({ ...this.state$.value, ...this.#counts(), ...part });
  }

  #counts(): { frames: number; discarded: number } {
    return { frames: this.#frames, discarded: this.#discards };
  }
}
