import { cleanWalk, footSpacing, signInverted } from './first-steps.ts';
import { plateByLines } from './plate-by-lines.ts';
import type { Scenario } from './scenario.ts';
import { chip, levelTurned, stationDoubled, stationSkipped } from './slips.ts';
import { drift, handHeat, levelNotStraight, straightNotLevel, tooSoon } from './time-and-warmth.ts';
import { blueDisagrees, threeReferences, twistByFeet, twistByWear, windUnseen } from './twist-and-wind.ts';

/** Every lesson that ships, in the order in which they are best learnt. */
export const scenarios: readonly Scenario[] = [
  cleanWalk,
  tooSoon,
  chip,
  drift,
  handHeat,
  levelTurned,
  stationSkipped,
  stationDoubled,
  signInverted,
  footSpacing,
  levelNotStraight,
  straightNotLevel,
  threeReferences,
  twistByFeet,
  twistByWear,
  windUnseen,
  blueDisagrees,
  plateByLines,
];
