import { WayscribeError } from '../../shared/errors.ts';
import type { Placement } from '../../shared/survey/way.ts';
import type { Needle } from './needle.ts';

/**
 * Why a take can't be made now, or null when it can. A person may insist on a reading that has not settled or on
 * a level that was not felt to move; nobody can insist on a reading that is not there.
 */
export function refusalOf(asked: {
  next: Placement | null;
  unitAlarm: string | null;
  now: Needle['now'] | null;
  insist: boolean;
}): WayscribeError | null {
  const { next, unitAlarm, now, insist } = asked;
  if (!next) return allTaken();
  const place = `${next.from}–${next.to}`;
  if (!now) {
    return new WayscribeError('take.silent', place, 'no level hangs on a cable', 'type the reading');
  }
  if (unitAlarm) {
    return new WayscribeError(
      'take.unitChanged',
      place,
      `the level changed its unit to ${unitAlarm}`,
      'say that you have seen it, or switch the level back',
    );
  }
  if (!now.flowing || (now.window.mean === null && now.state === 'ok')) {
    return new WayscribeError(
      'take.silent',
      place,
      'the level is silent',
      'see to its cable and its battery',
    );
  }
  if (now.state !== 'ok') {
    return new WayscribeError(
      'take.state',
      place,
      `the level says ${now.state}`,
      'bring it back into its range',
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
      'the level has not moved since the last take',
      `lift it and set it on ${place}`,
    );
  }
  return null;
}

/** Nothing is left to take in the walks that are on. */
export function allTaken(): WayscribeError {
  return new WayscribeError(
    'take.place',
    'survey',
    'every station is taken',
    'repeat one, walk back, or finish',
  );
}
