import type { ChannelReading } from '../../protocols/decode.ts';
import { encode } from '../../protocols/encode.ts';
import type { Profile } from '../../protocols/profile.ts';
import { converted, type ReadUnit } from '../../protocols/quantities.ts';
import type { Random } from './random.ts';

/** What can go wrong between an instrument and its port, to be planted on purpose. */
export const faults = ['silence', 'garbage', 'half', 'burst', 'unit', 'over-range', 'flip'] as const;
export type Fault = (typeof faults)[number];

/** Frames that a stall holds back, and bytes of one outbreak of garbage. */
const stalledFrames = 10;
const garbageBytes = 40;

/**
 * Says readings by a profile, and now and then plants the next of its faults:
 * a silence, garbage or half a frame in place of one, a burst after a stall, another unit from then on, an over-range
 * reading, one bit that flipped. What the profile can't say is said as it was.
 */
export class FaultySpeech {
  readonly #profile: Profile;
  readonly #faults: readonly Fault[];
  readonly #everyFrames: number;
  readonly #random: Random;
  #said = 0;
  #planted = 0;
  #mute = 0;
  #stalled: string[] | null = null;
  readonly #units = new Map<string, ReadUnit>();

  constructor(profile: Profile, faults: readonly Fault[], random: Random, everyFrames = 25) {
    this.#profile = profile;
    this.#faults = faults;
    this.#everyFrames = everyFrames;
    this.#random = random;
  }

  /** The bytes to send now, perhaps none, and the fault that begins with them. */
  say(readings: readonly ChannelReading[]): { bytes: string; fault: Fault | null } {
    this.#said += 1;
    const due = this.#faults.length > 0 && this.#said % this.#everyFrames === 0;
    const fault = due ? this.#faults[this.#planted++ % this.#faults.length]! : null;
    return { bytes: this.#bytes(readings, fault), fault };
  }

  #bytes(readings: readonly ChannelReading[], fault: Fault | null): string {
    if (fault === 'unit') this.#switchUnits();
    if (fault === 'silence') this.#mute = this.#silentFrames();
    if (fault === 'burst') this.#stalled = [];
    const frame = encode(this.#profile, this.#inUnits(readings, fault === 'over-range'));
    if (this.#mute > 0) {
      this.#mute -= 1;
      return '';
    }
    if (this.#stalled) {
      this.#stalled.push(frame);
      if (this.#stalled.length < stalledFrames) return '';
      const burst = this.#stalled.join('');
      this.#stalled = null;
      return burst;
    }
    if (fault === 'half') return frame.slice(0, Math.ceil(frame.length / 2));
    if (fault === 'garbage') return this.#garbage();
    if (fault === 'flip') return this.#flipped(frame);
    return frame;
  }

  /** As many frames as it takes until the silence is noticed, and a few more. */
  #silentFrames(): number {
    const { talk } = this.#profile;
    return talk.kind === 'by-button' ? 5 : Math.ceil((1.5 * talk.silentAfterMs) / talk.everyMs);
  }

  #inUnits(readings: readonly ChannelReading[], overRange: boolean): ChannelReading[] {
    return readings.map((reading): ChannelReading => {
      if (overRange && this.#knowsOverRange(reading.channel))
        return { ...reading, value: null, state: 'over-range' };
      const channel = this.#profile.channels.find(({ name }) => name === reading.channel);
      const unit = this.#units.get(reading.channel);
      if (!channel || !unit || reading.value === null) return reading;
      const ratio = converted(channel.quantity, 1, reading.unit ?? channel.unit, unit);
      const decimals = Math.max(0, (reading.decimals ?? 3) + Math.ceil(-Math.log10(ratio)));
      return { ...reading, value: reading.value * ratio, unit, decimals };
    });
  }

  #knowsOverRange(channel: string): boolean {
    const { says, channels } = this.#profile;
    const own = says.parts.filter((part) => 'channel' in part && part.channel === channel);
    const tables = [
      // A whole frame that is a state is one of every channel.
      'states' in says && channels.length === 1 ? says.states : {},
      ...own.map((part) => ('instead' in part ? part.instead : part.part === 'state' ? part.means : {})),
    ];
    return tables.some((table) => Object.values(table).includes('over-range'));
  }

  #switchUnits(): void {
    for (const part of this.#profile.says.parts) {
      if (part.part !== 'unit') continue;
      const others = [...new Set(Object.values(part.means))];
      for (const { name, unit } of this.#profile.channels) {
        if (part.channel !== undefined && part.channel !== name) continue;
        const now = this.#units.get(name) ?? unit;
        this.#units.set(name, others[(others.indexOf(now) + 1) % others.length]!);
      }
    }
  }

  #garbage(): string {
    const codes = Array.from({ length: garbageBytes }, () => Math.floor(256 * this.#random.even()));
    return String.fromCharCode(...codes);
  }

  #flipped(frame: string): string {
    const at = Math.floor(frame.length * this.#random.even());
    const bit = 1 << Math.floor(8 * this.#random.even());
    return frame.slice(0, at) + String.fromCharCode(frame.charCodeAt(at) ^ bit) + frame.slice(at + 1);
  }
}
