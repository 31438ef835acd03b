import { type EventOf, eventSchema, type SessionEvent } from '../../shared/session/events.ts';

type Reading = EventOf<'reading'>;

const fields = new Set(['seq', 't', 'm', 'type', 'from', 'raw', 'value', 'h']);
const latest = 8.64e15;

/**
 * A reading as nearly all are: ok, in the unit that is agreed, with nothing more to it. There are millions of them, so
 * that these are checked by hand; null for all else, which `eventSchema` judges.
 */
function plainReading(json: unknown): Reading | null {
  if (typeof json !== 'object' || json === null) return null;
  const { seq, t, m, type, from, raw, value } = json as Record<keyof Reading, unknown>;
  if (type !== 'reading' || typeof from !== 'string' || typeof raw !== 'string') return null;
  if (value !== null && !isNumber(value)) return null;
  if (!isNumber(seq) || !Number.isSafeInteger(seq) || seq < 1) return null;
  if (!isNumber(t) || Math.abs(t) > latest || !isNumber(m)) return null;
  for (const field in json) if (!fields.has(field)) return null;
  return { seq, t, m, type, from, raw, value };
}

/** The same as `eventSchema.safeParse`, faster for plain readings. */
export function parseEvent(json: unknown): ReturnType<typeof eventSchema.safeParse> {
  const data: SessionEvent | null = plainReading(json);
  return data ? { success: true, data } : eventSchema.safeParse(json);
}

function isNumber(value: unknown): value is number {
  return Number.isFinite(value);
}
