import type { Profile } from '../../protocols/profile.ts';
import { Acquaintance } from '../instruments/acquaintance.ts';
import { PortLink } from '../ports/link.ts';
import { type LineSettings, type PortMaker, stampNow } from '../ports/port.ts';
import type { Heard } from './heard.ts';

/** Bytes of which no profile understood anything are waited for this long before the line is set otherwise, ms. */
const patienceMs = 1500;
/** Fewer bytes than this say nothing about the line. */
const fewest = 12;

/**
 * Listens to a port that nobody has assigned yet, and never writes to it. When bytes come that no profile of this
 * line understands, it goes on to the settings of other profiles, in turn, until one does.
 */
export class LineHunt {
  readonly #port: PortMaker;
  readonly #heard: Heard;
  readonly #choices: readonly { readonly line: LineSettings; readonly profiles: readonly Profile[] }[];
  #at = 0;
  #acquaintance: Acquaintance;
  #link: PortLink;
  #bytes = 0;
  #patience: NodeJS.Timeout | null = null;
  #stopped = false;

  constructor(port: PortMaker, profiles: readonly Profile[], heard: Heard) {
    this.#port = port;
    this.#heard = heard;
    this.#choices = linesOf(profiles);
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
    if (this.#patience) clearTimeout(this.#patience);
    await this.#link.stop();
  }

  #newAcquaintance(): Acquaintance {
    return new Acquaintance(this.#choices[this.#at]!.profiles, stampNow());
  }

  #newLink(): PortLink {
    return new PortLink(this.#port, this.line, {
      opened: () => {
        this.#acquaintance = this.#newAcquaintance();
        this.#bytes = 0;
      },
      data: (bytes, stamp) => {
        this.#bytes += bytes.length;
        this.#acquaintance.push(bytes, stamp);
        this.#patience ??= setTimeout(() => void this.#judge(), patienceMs);
        this.#heard.bytes(bytes);
      },
      closed: () => {},
      state: (state, error) =>
        this.#heard.link(
          state,
          error && { code: error.code, place: error.place, message: error.detail, remedy: error.remedy },
        ),
    });
  }

  async #judge(): Promise<void> {
    this.#patience = null;
    if (this.#bytes < fewest || this.#acquaintance.fits.length > 0 || this.#choices.length === 1) return;
    await this.#link.stop();
    if (this.#stopped) return;
    this.#at = (this.#at + 1) % this.#choices.length;
    this.#acquaintance = this.#newAcquaintance();
    this.#link = this.#newLink();
    await this.#link.start();
  }
}

/** The settings of all profiles, each with those that use it. Control lines are left as they are. */
function linesOf(profiles: readonly Profile[]) {
  const lines = new Map<string, { line: LineSettings; profiles: Profile[] }>();
  for (const profile of profiles) {
    const { baudRate, dataBits, parity, stopBits } = profile.line;
    const line = { baudRate, dataBits, parity, stopBits };
    const key = JSON.stringify(line);
    const known = lines.get(key);
    if (known) known.profiles.push(profile);
    else lines.set(key, { line, profiles: [profile] });
  }
  return [...lines.values()];
}
