import type { Profile } from '../../protocols/profile.ts';
import { Acquaintance } from '../instruments/acquaintance.ts';
import { PortLink } from '../ports/link.ts';
import { type LineSettings, type PortMaker, stampNow } from '../ports/port.ts';
import type { Heard } from './heard.ts';

/** What came is enough to judge a line by when it is this many of its longest frames: a whole one was among them. */
const longestFrames = 3;
/** Short frames that come slowly are enough when at least so much came, in so many arrivals and over this time. */
const least = { bytes: 12, arrivals: 4, ms: 1500 };
/** A profile understands a line when this share of the bytes were frames of it: noise now and then looks like one. */
const understood = 1 / 4;

/**
 * Listens to a port that nobody has assigned yet, and never writes to it. When bytes come that no profile of this
 * line understands, it goes on to the settings of other profiles, in turn, until one does.
 *
 * A line is judged by what has arrived, at the moment when it arrives, and never by a timer: on a busy computer the
 * bytes that would have shown it right may still wait. Each further round asks for more before it judges, so that
 * the right line is found however slowly things go.
 */
export class LineHunt {
  readonly #port: PortMaker;
  readonly #heard: Heard;
  readonly #choices: readonly Choice[];
  #at = 0;
  #acquaintance: Acquaintance;
  #link: PortLink;
  #came = { bytes: 0, arrivals: 0, sinceMs: 0 };
  #round = 1;
  #stopped = false;

  constructor(port: PortMaker, profiles: readonly Profile[], heard: Heard) {
    this.#port = port;
    this.#heard = heard;
    this.#choices = choicesOf(profiles);
    this.#acquaintance = this.#newAcquaintance();
    this.#link = this.#newLink();
  }

  get line(): LineSettings {
    return this.#choices[this.#at]!.line;
  }

  get acquaintance(): Acquaintance {
    return this.#acquaintance;
  }

  async start(): Promise<void> {
    await this.#link.start();
  }

  async stop(): Promise<void> {
    this.#stopped = true;
    await this.#link.stop();
  }

  #newAcquaintance(): Acquaintance {
    return new Acquaintance(this.#choices[this.#at]!.profiles, stampNow());
  }

  #newLink(): PortLink {
    return new PortLink(this.#port, this.line, {
      opened: ({ m }) => {
        this.#acquaintance = this.#newAcquaintance();
        this.#came = { bytes: 0, arrivals: 0, sinceMs: m };
      },
      data: (bytes, stamp) => {
        this.#acquaintance.push(bytes, stamp);
        this.#heard.bytes(bytes);
        const { bytes: before, arrivals, sinceMs } = this.#came;
        this.#came = {
          bytes: before + bytes.length,
          arrivals: arrivals + 1,
          sinceMs: arrivals === 0 ? stamp.m : sinceMs,
        };
        if (this.#isEnough(stamp.m) && !this.#isUnderstood()) void this.#goOn();
      },
      closed: () => {},
      state: (state, error) =>
        this.#heard.link(
          state,
          error && { code: error.code, place: error.place, message: error.detail, remedy: error.remedy },
        ),
    });
  }

  /** Whether any instrument of this line would have shown a whole frame by now. */
  #isEnough(nowMs: number): boolean {
    const { longest, bootMs } = this.#choices[this.#at]!;
    const { bytes, arrivals, sinceMs } = this.#came;
    const sinceBootMs = nowMs - sinceMs - bootMs;
    if (sinceBootMs < 0) return false;
    if (bytes >= this.#round * longestFrames * longest) return true;
    return (
      bytes >= this.#round * least.bytes &&
      arrivals >= this.#round * least.arrivals &&
      sinceBootMs >= this.#round * least.ms
    );
  }

  #isUnderstood(): boolean {
    return this.#acquaintance.fits.some(({ bytes }) => bytes >= understood * this.#came.bytes);
  }

  async #goOn(): Promise<void> {
    if (this.#choices.length === 1) return;
    const link = this.#link;
    await link.stop();
    if (this.#stopped || link !== this.#link) return;
    this.#at = (this.#at + 1) % this.#choices.length;
    if (this.#at === 0) this.#round += 1;
    this.#acquaintance = this.#newAcquaintance();
    this.#link = this.#newLink();
    await this.#link.start();
  }
}

/** One setting of a line, and what is listened for there. */
interface Choice {
  readonly line: LineSettings;
  readonly profiles: readonly Profile[];
  /** Bytes of the longest frame. */
  readonly longest: number;
  /** Longest time that an instrument there takes to start up, ms. */
  readonly bootMs: number;
}

/** The settings of all profiles, each with those that use it. Control lines are left as they are. */
function choicesOf(profiles: readonly Profile[]): Choice[] {
  const lines = new Map<string, Choice>();
  for (const profile of profiles) {
    const { baudRate, dataBits, parity, stopBits, bootMs = 0 } = profile.line;
    const { frame } = profile;
    const line = { baudRate, dataBits, parity, stopBits };
    const key = JSON.stringify(line);
    const known = lines.get(key) ?? { line, profiles: [], longest: 0, bootMs: 0 };
    lines.set(key, {
      line,
      profiles: [...known.profiles, profile],
      longest: Math.max(known.longest, frame.ends === 'length' ? frame.length : frame.longest),
      bootMs: Math.max(known.bootMs, bootMs),
    });
  }
  return [...lines.values()];
}
