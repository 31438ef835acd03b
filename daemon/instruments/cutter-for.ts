import { bytesOf } from '../../protocols/bytes.ts';
import { longestGapMs } from '../../protocols/cut.ts';
import type { Profile } from '../../protocols/profile.ts';
import type { Stamp } from '../../shared/session/events.ts';
import type { CutListener, Cutter } from './cutter.ts';
import { FormCutter } from './form-cutter.ts';
import { FrameCutter } from './frame-cutter.ts';

/** The cutter that the profile asks for, for a port that was opened at `stamp`. */
export function cutterFor(profile: Profile, stamp: Stamp, listener: CutListener): Cutter {
  const { frame, sum } = profile;
  if (frame.ends !== 'delimiter') return new FormCutter(profile, listener);
  const { delimiter, longest } = frame;
  const whole = { delimiter: bytesOf(delimiter), longest };
  return new FrameCutter(whole, stamp, listener, sum !== undefined, longestGapMs(profile));
}
