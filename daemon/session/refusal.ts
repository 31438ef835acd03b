import { WayscribeError } from '../../shared/errors.ts';
import type { ReadingState } from '../../shared/session/events.ts';
import { type Placement, placeWords } from '../../shared/survey/plan.ts';
import type { NeedleNow } from './needle.ts';

/**
 * Why a take can't be made now, or null when it can. A person may insist on a reading that has not settled or on
 * a level that was not felt to move; nobody can insist on a reading that is not there.
 */
export function refusalOf(asked: {
  next: Placement | null;
  unitAlarm: string | null;
  now: NeedleNow | null;
  insist: boolean;
}): WayscribeError | null {
  const { next, unitAlarm, now, insist } = asked;
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

/** Nothing is left to take in the walks that are on. */
export function allTaken(): WayscribeError {
  return new WayscribeError(
    'take.place',
    'survey',
    'every station is taken',
    'repeat one, add a run, or finish',
  );
}
