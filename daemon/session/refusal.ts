import { WayscribeError } from '../../shared/errors.ts';
import type { ReadingState } from '../../shared/session/events.ts';
import { type Placement, placeWords } from '../../shared/survey/plan.ts';
import type { NeedleNow } from './needle.ts';
import type { Reference } from './reference.ts';

/**
 * Why a take can't be made now, or null when it can. A person may insist on a reading that has not settled or on
 * a level that was not felt to move; nobody can insist on a reading that is not there.
 */
export function refusalOf(asked: {
  next: Placement | null;
  unitAlarm: string | null;
  now: NeedleNow | null;
  /** It sends a reading when its own button is pressed, and none is there before that. */
  byButton?: boolean;
  insist: boolean;
}): WayscribeError | null {
  const { next, unitAlarm, now, byButton = false, insist } = asked;
  if (!next) return allTaken();
  const place = placeWords(next);
  if (!now) {
    return new WayscribeError('take.silent', place, 'no instrument hangs on a cable', 'type the reading');
  }
  if (unitAlarm) {
    return new WayscribeError(
      'take.unitChanged',
      place,
      `the instrument changed its unit to ${unitAlarm}`,
      'say that you have seen it, or switch it back',
    );
  }
  if (byButton && now.window.mean === null && now.state === 'ok') {
    return new WayscribeError(
      'take.silent',
      place,
      'this instrument sends a reading by its own button',
      'press the button on the instrument',
    );
  }
  if (byButton && now.bounced) {
    return new WayscribeError(
      'take.bounced',
      place,
      'its button sent the same reading twice within half a second: it was taken once',
      'if it is meant for the next station too, press again',
    );
  }
  if (!now.flowing || (now.window.mean === null && now.state === 'ok')) {
    return new WayscribeError(
      'take.silent',
      place,
      'the instrument is silent',
      'see to its cable and its battery',
    );
  }
  if (now.state !== 'ok') {
    return new WayscribeError(
      'take.state',
      place,
      `the instrument says ${now.state}`,
      stateRemedies[now.state],
    );
  }
  if (insist) return null;
  if (now.window.steadiness !== 'steady') {
    return new WayscribeError(
      'take.unsteady',
      place,
      'the reading has not settled',
      'wait until it is steady',
    );
  }
  if (!now.armed) {
    return new WayscribeError(
      'take.notReArmed',
      place,
      'nothing was felt to move since the last take, or since the cable was out',
      `lift the instrument and set it on ${place}`,
    );
  }
  return null;
}

const stateRemedies: Record<Exclude<ReadingState, 'ok'>, string> = {
  'over-range': 'bring it back into its range',
  'low-battery': 'change its battery',
  hold: 'switch its hold off',
  error: 'see what its display says',
};
/**
 * Why a take can't be held against the reference level now, or null when it can. `late`: it was lost before it had
 * spoken at all times of the take.
 */
export function referenceRefusal(
  { needle }: Reference,
  next: Placement,
  { insist, late = false }: { insist: boolean; late?: boolean },
): WayscribeError | null {
  const place = placeWords(next);
  const { name } = needle.instrument;
  const { flowing, window, state } = needle.now;
  const refused = (message: string, remedy: string) =>
    new WayscribeError('take.reference', place, `the reference level ${name} ${message}`, remedy);
  if (late) return refused('was not read all through this take', 'see to its cable, then take again');
  if (!flowing || (window.mean === null && state === 'ok')) {
    return refused('is silent', 'see to its cable and its battery');
  }
  if (state !== 'ok') return refused(`says ${state}`, 'bring it back into its range');
  if (!insist && window.steadiness !== 'steady') {
    return refused('is not at rest', 'leave it and the part alone until it is steady');
  }
  return null;
}

/** Nothing is left to take in the walks that are on. */
export function allTaken(): WayscribeError {
  return new WayscribeError(
    'take.place',
    'survey',
    'every station is taken',
    'repeat one, add a run, or finish',
  );
}
