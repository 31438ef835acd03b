import { Subject } from 'rxjs';
import type { ProfileBook } from '../../protocols/book.ts';
import { hintFor } from '../../protocols/hint.ts';
import type { Channel, Profile } from '../../protocols/profile.ts';
import { converted } from '../../protocols/quantities.ts';
import { armed } from '../../shared/live/hands-free.ts';
import type {
  BenchPort,
  BenchStream,
  LinkState,
  Live,
  SentError,
  WantedPort,
} from '../../shared/messages.ts';
import type { SessionEvent } from '../../shared/session/events.ts';
import type { ReadingUnit } from '../../shared/session/setup.ts';
import { Acquaintance, type Fit } from '../instruments/acquaintance.ts';
import { Instrument, type Reading } from '../instruments/instrument.ts';
import { type LineSettings, type PortMaker, stampNow } from '../ports/port.ts';
import { Needle } from '../session/needle.ts';
import type { Heard } from './heard.ts';
import { LineHunt } from './line-hunt.ts';
import { tapped } from './tapped-port.ts';

/** Newest bytes that are shown as they came. */
const shownBytes = 192;
/** Fewer bytes than this may be the head of a first frame. */
const tellingBytes = 16;

/** One port that is listened to: with no profile yet, or as the instrument of one. */
export class Ear {
  readonly wanted: WantedPort;
  /** Something of `state` is new. */
  readonly changed$ = new Subject<void>();
  readonly live$ = new Subject<Live>();
  readonly #listening: LineHunt | AssignedPort;
  #raw = '';
  #count = 0;
  #link: LinkState = 'opening';
  #error: SentError | null = null;
  #silent = false;
  #unread = false;

  constructor(wanted: WantedPort, book: ProfileBook, port: PortMaker) {
    this.wanted = wanted;
    const heard: Heard = {
      bytes: (bytes) => {
        this.#raw = (this.#raw + bytes.toString('latin1')).slice(-shownBytes);
        this.#count += bytes.length;
        this.changed$.next();
      },
      link: (state, error, { silent, unread } = { silent: false, unread: false }) => {
        this.#link = state;
        this.#unread = unread;
        this.#silent = silent;
        this.#error = error;
        this.changed$.next();
      },
    };
    this.#listening =
      wanted.profile === undefined
        ? new LineHunt(port, book.all, heard)
        : new AssignedPort(wanted, book.find(wanted.profile), port, heard, (live) => this.live$.next(live));
  }

  get state(): BenchPort {
    const { line, acquaintance } = this.#listening;
    const error = this.#error;
    const { fits } = acquaintance;
    const unread = this.#unread || (fits.length === 0 && this.#count >= tellingBytes);
    return {
      ...this.wanted,
      link: this.#link,
      ...(error && { error }),
      silent: this.#silent,
      unread,
      line: lineWords(line),
      hex: Buffer.from(this.#raw, 'latin1').toString('hex'),
      bytes: this.#count,
      hint: fits.length === 0 || unread ? hintFor(this.#raw) : null,
      fits: fits.slice(0, 6).map(sentFit),
      streams: this.#listening instanceof AssignedPort ? this.#listening.streams : [],
    };
  }

  async start(): Promise<void> {
    await this.#listening.start();
  }

  async stop(): Promise<void> {
    await this.#listening.stop();
    this.changed$.complete();
    this.live$.complete();
  }
}

/** A port that was assigned: its instrument, a needle for each of its values that can be measured with. */
class AssignedPort {
  readonly acquaintance: Acquaintance;
  readonly #instrument: Instrument;
  readonly #needles: readonly Needle[];
  readonly #streams: Map<string, BenchStream>;

  constructor(
    { port: name, quiet }: WantedPort,
    told: Profile,
    port: PortMaker,
    heard: Heard,
    show: (live: Live) => void,
  ) {
    const profile = quiet === undefined ? told : steadyWithin(told, quiet);
    this.acquaintance = new Acquaintance([profile], stampNow());
    const tap = tapped(port, (bytes, stamp) => {
      this.acquaintance.push(bytes, stamp);
      heard.bytes(bytes);
    });
    this.#instrument = new Instrument(name, profile, tap);
    const measuring = profile.channels.filter(({ quantity }) => quantity !== 'temperature');
    this.#streams = new Map(measuring.map((channel) => [channel.name, streamOf(name, profile, channel)]));
    this.#instrument.readings$.subscribe((reading) => this.#note(reading, profile));
    this.#instrument.state$.subscribe(({ link, error, silent, unread = false }) => {
      heard.link(link, error ?? null, { silent, unread });
    });
    this.#needles = measuring.map((channel) => {
      const stream = this.#streams.get(channel.name)!;
      const { unit } = stream;
      const setup = { name, source: 'cable', channel: channel.name, unit, graduation: 1 } as const;
      const needle = new Needle(this.#instrument, setup, unrecorded(), armed);
      needle.live$.subscribe((live) => show({ ...live, from: stream.id }));
      return needle;
    });
  }

  get line(): LineSettings {
    return this.#instrument.profile.line;
  }

  get streams(): BenchStream[] {
    return [...this.#streams.values()];
  }

  async start(): Promise<void> {
    await this.#instrument.start();
  }

  async stop(): Promise<void> {
    for (const needle of this.#needles) needle.stop();
    await this.#instrument.stop();
  }

  /** What the frames themselves tell of unit and smallest step. */
  #note({ decoded }: Reading, { channels }: Profile): void {
    const stream = this.#streams.get(decoded.channel);
    const channel = channels.find(({ name }) => name === decoded.channel);
    if (!stream || !channel) return;
    const { unit, decimals } = decoded;
    const said = unit ?? (channel.unitKnown ? channel.unit : stream.unit);
    const step = decimals === undefined ? null : Math.abs(channel.factor) * 10 ** -decimals;
    this.#streams.set(decoded.channel, {
      ...stream,
      unitOpen: stream.unitOpen && unit === undefined,
      ...(step !== null && { resolution: converted(channel.quantity, step, said, stream.unit) }),
    });
  }
}

function streamOf(port: string, { talk }: Profile, channel: Channel): BenchStream {
  const { name, quantity, unit, unitKnown, resolution, range, steady } = channel;
  return {
    id: `${port} ${name}`,
    port,
    channel: name,
    reads: quantity === 'slope' ? 'tilt' : 'height',
    unit: unit as ReadingUnit,
    unitOpen: !unitKnown,
    byButton: talk.kind === 'by-button',
    resolution: resolution ?? steady.spread,
    quiet: steady.spread,
    ...(range && { range: [range[0], range[1]] }),
  };
}

/** The profile for an instrument that was seen to be this quiet at rest: a trend may be half as large again. */
function steadyWithin(profile: Profile, spread: number): Profile {
  const steady = { spread, trend: 1.5 * spread };
  return { ...profile, channels: profile.channels.map((channel) => ({ ...channel, steady })) };
}

/** On the bench nothing goes on record. */
function unrecorded(): ConstructorParameters<typeof Needle>[2] {
  let seq = 0;
  return async (event, stamp) => {
    seq += 1;
    return { ...event, ...stamp, seq } as SessionEvent;
  };
}

function sentFit({ profile, frames, discarded, last }: Fit): BenchPort['fits'][number] {
  const { id, title, channels } = profile;
  const reads = (last ?? []).map(({ channel, value, unit, state }) => {
    const own = channels.find(({ name }) => name === channel);
    const named = unit ?? (own?.unitKnown ? own.unit : undefined);
    return { channel, value, state, ...(named && { unit: named }) };
  });
  return { profile: id, title, frames, discarded, reads };
}

function lineWords({ baudRate, dataBits, parity, stopBits }: LineSettings): string {
  return `${baudRate} baud, ${dataBits} data bits, ${parity === 'none' ? 'no' : parity} parity, ${stopBits} stop bit${stopBits === 1 ? '' : 's'}`;
}
