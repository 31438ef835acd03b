import type { TakeEvent } from './events.ts';
import type { Session } from './fold.ts';

/**
 * Standard deviation of one station that was read while the tip slid over it, in counts: the scatter of its readings
 * about their straight line over the root of their number, all such takes that count put together. Undefined when there
 * are none, or when their readings agree to the last digit.
 */
export function sweptSigma({ counted }: Pick<Session, 'counted'>): number | undefined {
  const swept = [...counted.values()].filter(isSwept);
  const freedom = swept.reduce((sum, { count }) => sum + count - 2, 0);
  const squares = swept.reduce((sum, { spread, count }) => sum + (count - 2) * (spread ?? 0) ** 2, 0);
  const readings = swept.reduce((sum, { count }) => sum + 1 / count, 0);
  const variance = (squares / freedom) * (readings / swept.length);
  return variance > 0 ? Math.sqrt(variance) : undefined;
}

/**
 * Standard deviation of one reading of a run, in counts: of what was swept its own, of what was read at rest `known`,
 * of both together their mean square. Undefined when one of them is not known.
 */
export function sigmaOfTakes(
  session: Session,
  takes: readonly TakeEvent[],
  known: number | undefined,
): number | undefined {
  const share = takes.filter(isSwept).length / takes.length;
  if (share === 0) return known;
  const swept = sweptSigma(session) ?? known;
  if (swept === undefined || (share < 1 && known === undefined)) return undefined;
  return Math.sqrt(share * swept ** 2 + (1 - share) * (known ?? 0) ** 2);
}

/** What is said of it beside a result. */
export function sweptNote({ plan }: Session, takes: readonly TakeEvent[]): string | null {
  const swept = new Set(takes.filter(isSwept).map(({ place }) => place.run));
  if (swept.size === 0) return null;
  const words = plan.runs.filter(({ id }) => swept.has(id)).map(({ words }) => words);
  return `Swept on without a stop: ${words.join('; ')}. Each station is the mean of the readings around the moment at which it was passed, and as uncertain as these scatter.`;
}

function isSwept({ swept }: TakeEvent): boolean {
  return swept !== undefined;
}
