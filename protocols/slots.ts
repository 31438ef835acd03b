import type { ReadingState } from '../shared/session/events.ts';
import type { ReadUnit } from './quantities.ts';

/** What was found in a frame, part by part, before it is put together to readings. */
export type Slot =
  | {
      readonly kind: 'number';
      readonly channel: string;
      /** A decimal number as JavaScript reads it. */
      readonly text: string;
      /** Digits behind the point, where the frame shows them. */
      readonly decimals?: number;
    }
  /** A text that stood in place of the number. */
  | { readonly kind: 'instead'; readonly channel: string; readonly state: ReadingState }
  | { readonly kind: 'unit'; readonly channel: string | undefined; readonly unit: ReadUnit }
  | { readonly kind: 'state'; readonly channel: string | undefined; readonly state: ReadingState };

/** Either what stands in a frame, or why it is no frame. */
export type Matched = { readonly slots: readonly Slot[] } | { readonly why: string };

/** What a channel is to say: the number as it is sent, whatever its state. */
export interface Spoken {
  readonly value: number;
  readonly decimals: number | undefined;
  readonly unit: ReadUnit;
  /** Whether the unit is to be named where it may be left out. */
  readonly named: boolean;
  readonly state: ReadingState;
}

/** What every channel is to say, by name. */
export type Speech = ReadonlyMap<string, Spoken>;

/** What the channel of a part says; of a part that belongs to every channel, the first one. */
export function spokenBy(speech: Speech, channel: string | undefined): Spoken {
  return channel === undefined ? [...speech.values()][0]! : speech.get(channel)!;
}

/** The text that means `wanted`, the first of the table. */
export function textFor<T>(means: Readonly<Record<string, T>>, wanted: T): string | undefined {
  return Object.keys(means).find((text) => means[text] === wanted);
}
