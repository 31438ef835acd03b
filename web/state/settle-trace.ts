import type { Live } from '../../shared/messages.ts';

/** The needle over the last seconds, oldest first. */
export interface TracePoint {
  readonly m: number;
  readonly value: number;
}

export const traceMs = 10_000;

/** The trace after one more live message. A clock that ran backwards or a long hole starts it anew. */
export function extendTrace(trace: readonly TracePoint[], live: Live): readonly TracePoint[] {
  if (live.value === null) return trace;
  const last = trace.at(-1);
  const point = { m: live.m, value: live.value };
  if (last && (live.m < last.m || live.m - last.m > traceMs)) return [point];
  if (last && live.m === last.m) return trace;
  return [...trace.filter(({ m }) => live.m - m <= traceMs), point];
}
