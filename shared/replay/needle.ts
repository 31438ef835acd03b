import { z } from 'zod';
import { armed, feel, type HandsFree, spent } from '../live/hands-free.ts';
import { emptyWindow, observe, type SteadyLimits, type Window } from '../live/steadiness.ts';
import type { Live } from '../messages.ts';
import type { Header } from '../session/events.ts';
import { fromInternal, heightUnits, toInternal } from '../units.ts';
import type { Recorded } from './recorded.ts';
import { lastNotBeyond } from './search.ts';

/** How far back the needle is followed, ms, and at most how many readings. */
const memoryMs = 12_000;
const memoryReadings = 400;

/** Of the copy of the profile, what steadiness needs. */
const steadyProfile = z.object({
  steady: z.object({ windowMs: z.number(), fewest: z.number(), movingFactor: z.number() }),
  channels: z.array(
    z.object({
      name: z.string(),
      quantity: z.string(),
      unit: z.string(),
      steady: z.object({ spread: z.number(), trend: z.number() }),
    }),
  ),
});

/** Limits of steadiness in the unit in which the session counts; null when the readings were typed. */
export function steadyLimits({ profile, setup }: Header): SteadyLimits | null {
  const copy = steadyProfile.safeParse(profile);
  if (!copy.success) return null;
  const { unit, graduation, channel: wanted } = setup.instrument;
  const quantity = (heightUnits as readonly string[]).includes(unit) ? 'length' : 'slope';
  const channel = copy.data.channels.find(
    ({ name, quantity: of }) => of === quantity && (wanted === undefined || name === wanted),
  );
  if (!channel) return null;
  const of = quantity === 'length' ? 'height' : 'tilt';
  const count = (value: number) => fromInternal(of, toInternal(of, value, channel.unit), unit) / graduation;
  return { ...copy.data.steady, spread: count(channel.steady.spread), trend: count(channel.steady.trend) };
}

export interface NeedleThen {
  readonly live: Live | null;
  /** The needle over the last seconds, oldest first. */
  readonly trace: readonly { readonly m: number; readonly value: number }[];
}

/**
 * What the needle showed when the event at `place` had just happened: its readings once more through the same
 * steadiness as then.
 */
export function needleAt(recorded: Recorded, limits: SteadyLimits | null, place: number): NeedleThen {
  if (!limits || place < 0) return { live: null, trace: [] };
  const { m, value, moved, seq, kept, keptAt, header } = recorded;
  const from = beginOf(recorded, place);
  let window: Window = emptyWindow;
  let hands: HandsFree = from === 0 ? armed : spent;
  let nextKept = lastNotBeyond(keptAt, from - 1) + 1;
  const trace: { m: number; value: number }[] = [];
  let live = null as Live | null;
  for (let k = from; k <= place; k += 1) {
    if (keptAt[nextKept] === k) {
      const { type } = kept[nextKept]!;
      nextKept += 1;
      if (type === 'take' || type === 'gap') hands = spent;
      if (type === 'gap') window = emptyWindow;
      if (live && type === 'take') live = { ...live, armed: false };
      continue;
    }
    if (moved[k] === 0) continue;
    const is = Number.isNaN(value[k]!) ? null : value[k]!;
    window = is === null ? emptyWindow : observe(window, { seq: seq[k]!, m: m[k]!, value: is }, limits);
    hands = feel(hands, is === null ? 'moving' : window.steadiness).state;
    if (is !== null) trace.push({ m: m[k]!, value: is });
    const { steadiness, mean, spread, trend, steadySince } = window;
    live = {
      from: header.setup.instrument.name,
      m: m[k]!,
      value: is,
      state: is === null ? 'error' : 'ok',
      steadiness,
      mean,
      spread,
      trend,
      spreadLimit: limits.spread,
      steadyForMs: steadySince === null ? 0 : m[k]! - steadySince,
      armed: hands.armed,
    };
  }
  return { live, trace };
}

/** The place from which on the needle is followed: a few seconds back, and never across a clock that starts anew. */
function beginOf({ m }: Recorded, place: number): number {
  let k = place;
  while (k > 0 && place - k < memoryReadings && m[k - 1]! <= m[k]! && m[place]! - m[k - 1]! <= memoryMs)
    k -= 1;
  return k;
}
