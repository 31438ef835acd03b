import type { TakeEvent } from '../session/events.ts';
import type { Session } from '../session/fold.ts';
import type { Setup } from '../session/setup.ts';
import { sweptSigma } from '../session/swept.ts';
import { takenRuns } from '../session/taken-runs.ts';
import type { Result } from '../sheet/result.ts';
import { type Placement, placementKey, type Run } from '../survey/plan.ts';
import { tiltUnits, toInternal } from '../units.ts';

export type Fitted = Result['readings'][number];

/** A reading that counts, in µm/m or µm, and how it fits to the others where there is a result. */
export interface CountedReading {
  readonly place: Placement;
  readonly take: TakeEvent;
  readonly value: number;
  readonly fitted: Fitted | undefined;
}

/** Every run of which something counts, with its readings in the order in which they were taken. */
export function readingsOf(
  session: Session,
  result: Result | null,
): { readonly run: Run; readonly readings: readonly CountedReading[] }[] {
  const fits = new Map(
    (result?.readings ?? []).map((fitted) => [placementKey(placeOf(fitted)), fitted] as const),
  );
  const count = countOf(session.setup);
  return takenRuns(session).map(({ run, takes }) => ({
    run,
    readings: takes.map((take) => ({
      place: take.place,
      take,
      value: take.value * count,
      fitted: fits.get(placementKey(take.place)),
    })),
  }));
}

export function placeOf(fitted: Fitted): Placement {
  return 'walk' in fitted
    ? { run: fitted.walk, at: [fitted.from, fitted.to] }
    : { run: fitted.sweep, at: [fitted.at] };
}

/** One of what the instrument counts, in µm/m or µm. */
export function countOf({ instrument }: Setup): number {
  const quantity = (tiltUnits as readonly string[]).includes(instrument.unit) ? 'tilt' : 'height';
  return toInternal(quantity, instrument.graduation, instrument.unit);
}

/**
 * Standard deviation of one reading, µm/m or µm: as it is known, else as the readings scatter, else the 1 that is
 * assumed.
 */
export function sigmaOf(session: Session, result: Result | null): number {
  const { setup } = session;
  const sigma = setup.instrument.sigma ?? sweptSigma(session);
  if (sigma !== undefined) return sigma * countOf(setup);
  return result?.fit.sigmaScaled && result.fit.s0! > 0 ? result.fit.s0! : 1;
}

export function unitOf(run: Run): 'µm/m' | 'µm' {
  return run.reads === 'tilt' ? 'µm/m' : 'µm';
}

/** What is to be wiped before a reading is repeated. */
export function wipe(run: Run): string {
  return run.reads === 'tilt' ? 'Wipe the feet and the metal' : 'Wipe the tip and the metal';
}

/** A length as the person of this set-up reads it. */
export function lengthWords(mm: number, { lengthUnit }: Setup): string {
  return lengthUnit === 'in' ? `${Number((mm / 25.4).toFixed(3))} in` : `${Number(mm.toFixed(1))} mm`;
}
