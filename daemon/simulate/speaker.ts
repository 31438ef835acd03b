import { distinctUntilChanged, Subject } from 'rxjs';
import { bytesOf } from '../../protocols/bytes.ts';
import type { ChannelReading } from '../../protocols/decode.ts';
import type { Channel, Profile } from '../../protocols/profile.ts';
import type { WayscribeError } from '../../shared/errors.ts';
import { PortLink } from '../ports/link.ts';
import { type PortMaker, stampNow } from '../ports/port.ts';
import { type Fault, FaultySpeech } from './faults.ts';
import { type Random, seededRandom } from './random.ts';

/** Time between two presses of an instrument's own button, ms, unless told otherwise. */
const pressEveryMs = 2000;
/** Time of one swing of the values, ms. */
const swingMs = 20_000;

export interface SpeakerOptions {
  readonly faults?: readonly Fault[];
  readonly seed?: number;
  /** Time between two frames, ms; as the profile says when left out. */
  readonly everyMs?: number;
  /** What the instrument reads at a time; slow swings and a little noise when left out. */
  readonly reads?: (nowMs: number) => readonly ChannelReading[];
}

/** Bytes that were sent, one character a byte, and the fault that was planted with them. */
export interface Said {
  readonly bytes: string;
  readonly fault: Fault | null;
}

/** An instrument of any family, played on a port: it speaks by itself or answers, as its profile says. */
export class Speaker {
  readonly said$ = new Subject<Said>();
  readonly #line$ = new Subject<WayscribeError | null>();
  /** Each time the port opens, null; each time there is another reason why it can't be, that reason. */
  readonly line$ = this.#line$.pipe(distinctUntilChanged((a, b) => a?.message === b?.message));
  readonly #link: PortLink;
  readonly #speech: FaultySpeech;
  readonly #reads: (nowMs: number) => readonly ChannelReading[];
  readonly #request: string | null;
  readonly #everyMs: number | null;
  #speaking: NodeJS.Timeout | null = null;
  #heard = '';

  constructor(profile: Profile, port: PortMaker, options: SpeakerOptions = {}) {
    const { faults = [], seed = 1, everyMs, reads } = options;
    const { talk } = profile;
    const random = seededRandom(seed);
    this.#speech = new FaultySpeech(profile, faults, random);
    this.#reads = reads ?? ((nowMs) => profile.channels.map((channel) => swinging(channel, nowMs, random)));
    this.#request = talk.kind === 'on-request' ? bytesOf(talk.request) : null;
    this.#everyMs =
      talk.kind === 'on-request'
        ? null
        : (everyMs ?? (talk.kind === 'periodic' ? talk.everyMs : pressEveryMs));
    this.#link = new PortLink(port, profile.line, {
      opened: () => {
        this.#heard = '';
      },
      data: (bytes) => this.#hear(bytes.toString('latin1')),
      closed: () => {},
      state: (state, error) => {
        if (state !== 'opening') this.#line$.next(error);
      },
    });
  }

  async start(): Promise<void> {
    await this.#link.start();
    if (this.#everyMs !== null) this.#speaking = setInterval(() => this.#speak(), this.#everyMs);
  }

  async stop(): Promise<void> {
    if (this.#speaking) clearInterval(this.#speaking);
    await this.#link.stop();
    this.said$.complete();
    this.#line$.complete();
  }

  /** Answers each request that is whole; what comes between is not for this instrument. */
  #hear(bytes: string): void {
    if (this.#request === null) return;
    this.#heard += bytes;
    for (;;) {
      const at = this.#heard.indexOf(this.#request);
      if (at < 0) break;
      this.#heard = this.#heard.slice(at + this.#request.length);
      this.#speak();
    }
    this.#heard = this.#heard.slice(-this.#request.length);
  }

  #speak(): void {
    const said = this.#speech.say(this.#reads(stampNow().m));
    if (said.bytes) this.#link.write(said.bytes);
    this.said$.next(said);
  }
}

/** A slow swing that stays inside what the channel can say, and noise within its limits of steadiness. */
function swinging({ name, steady, range }: Channel, nowMs: number, random: Random): ChannelReading {
  const reach = Math.min(40 * steady.spread, ...(range ?? []).map((end) => Math.abs(end) / 2));
  const value = reach * Math.sin((2 * Math.PI * nowMs) / swingMs) + 0.3 * steady.spread * random.normal();
  // The last digit shows the noise.
  const decimals = Math.max(0, Math.ceil(-Math.log10(steady.spread)));
  return { channel: name, value: Number(value.toFixed(decimals)), state: 'ok', decimals };
}
