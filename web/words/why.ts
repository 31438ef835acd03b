import { placeOf, sigmaOf, unitOf } from '../../shared/notice/reading.ts';
import type { ReadingBehind } from '../../shared/reduce/behind.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { type Placement, placementKey, placeWords } from '../../shared/survey/plan.ts';
import type { Lit } from '../state/lit.ts';
import { say } from './say.ts';

/** Beyond this many standard deviations a reading is suspect: chance goes there once in a thousand. */
const suspectFrom = 3.29;
/** Below this share nothing checks a reading. */
const unchecked = 0.05;

/** A reading by its place and its walk: "F3 – F4 (Front way, going out)". */
function named(session: Session, place: Placement): string {
  const run = session.plan.runs.find(({ id }) => id === place.run);
  return `${placeWords(place)} (${run?.words ?? place.run})`;
}

/** Why a reading is believed or doubted: its residual and its redundancy in words. Empty when it is not in the result. */
export function whyReading(session: Session, result: Result, place: Placement): readonly string[] {
  const key = placementKey(place);
  const fitted = result.readings.find((reading) => placementKey(placeOf(reading)) === key);
  const run = session.plan.runs.find(({ id }) => id === place.run);
  if (!fitted || !run) return [];
  const unit = unitOf(run);
  const { residual, redundancy, w } = fitted;
  if (redundancy < unchecked || w === null) {
    return [
      say('Nothing checks {reading}.', { reading: named(session, place) }),
      say(
        'Whatever it had read, the other readings would fit to it: an error in it is in the heights, unseen.',
      ),
    ];
  }
  const sigma = sigmaOf(session, result);
  const share = Math.round(100 * redundancy);
  const [more, less] = [say('more'), say('less')];
  const sentences = [
    say(
      '{reading}: it reads {size} {unit} {side} than all readings together come to. That is its residual.',
      {
        reading: named(session, place),
        size: Math.abs(residual).toFixed(1),
        unit,
        side: residual < 0 ? more : less,
      },
    ),
    say(
      'Of an error in this reading, {share} % shows in its residual; the rest has gone into the heights. That share is its redundancy. So the error would be about {size} {unit}.',
      { share, size: Math.abs(residual / redundancy).toFixed(1), unit },
    ),
    say(
      'Readings scatter by {sigma} {unit}; chance would leave a residual of about {expected} {unit} here. This one is {times} times that.',
      {
        sigma: sigma.toFixed(2),
        unit,
        expected: (sigma * Math.sqrt(redundancy)).toFixed(2),
        times: Math.abs(w).toFixed(1),
      },
    ),
  ];
  return [...sentences, verdict(session, result, fitted)];
}

function verdict(session: Session, result: Result, fitted: Result['readings'][number]): string {
  const { w, suspect } = fitted;
  if (Math.abs(w ?? 0) <= suspectFrom) {
    return say('Up to {limit} times is chance, all but once in a thousand: it is not suspect.', {
      limit: suspectFrom.toFixed(1),
    });
  }
  const twins = result.readings.filter(
    (other) => other !== fitted && other.w !== null && Math.abs(Math.abs(other.w) - Math.abs(w!)) < 1e-6,
  );
  if (twins.length > 0) {
    return say(
      'Chance goes beyond {limit} times only once in a thousand: something is wrong. {other} has as large a residual, for the two check only each other: which one is wrong can’t be told. Repeat both.',
      { limit: suspectFrom.toFixed(1), other: named(session, placeOf(twins[0]!)) },
    );
  }
  return suspect
    ? say(
        'Chance goes beyond {limit} times only once in a thousand, and no other reading is further off: it is suspect. Wipe and repeat it.',
        {
          limit: suspectFrom.toFixed(1),
        },
      )
    : say(
        'That is too much for chance, but another reading is further off and may have drawn this one along: repeat that one first.',
      );
}

/** What a height is made of, in words. `behind` has its readings with their weights. */
export function whyHeight(
  session: Session,
  lit: Exclude<Lit, { is: 'reading' }>,
  behind: readonly ReadingBehind[],
): string {
  const station = lit.is === 'across' ? lit.pair[1] : lit.station;
  const worth = behind.filter(({ weight }) => Math.abs(weight) > 1e-9);
  const first = worth.reduce<ReadingBehind | null>(
    (most, each) => (!most || Math.abs(each.weight) > Math.abs(most.weight) + 1e-9 ? each : most),
    null,
  );
  if (!first) {
    return lit.is === 'across'
      ? say('The others are held against {pair}: no reading moves it.', { pair: lit.pair.join('–') })
      : say('{station} is on the reference line by definition: no reading moves it.', { station });
  }
  const run = session.plan.runs.find(({ id }) => id === first.run);
  const values = {
    count: worth.length,
    station,
    front: lit.is === 'across' ? lit.pair[0] : '',
    reading: named(session, { run: first.run, at: [...first.at] as Placement['at'] }),
    unit: run ? unitOf(run) : '',
    size: Math.abs(first.weight).toFixed(3),
    side: first.weight > 0 ? say('higher') : say('lower'),
  };
  return lit.is === 'across'
    ? say(
        '{count} readings make how high {station} stands over {front}; the darker, the more it counts. {reading} counts most: had it read 1 {unit} more, {station} would stand {size} µm {side}.',
        values,
      )
    : say(
        '{count} readings make the height of {station}; the darker, the more it counts. {reading} counts most: had it read 1 {unit} more, {station} would stand {size} µm {side}.',
        values,
      );
}
