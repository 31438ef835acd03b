import type { ComponentChildren } from 'preact';
import { usePage, usePick } from '../state/page.ts';
import { atSpeed, playPause, rewind, speeds, step, stepBack, toEnd } from '../state/player-actions.ts';
import { endOf, msAt } from '../state/replay.ts';
import { beside, writing } from '../state/replay-actions.ts';
import { leave, working } from '../state/result-actions.ts';
import { lasting } from '../words/live.ts';
import { say } from '../words/say.ts';
import { ActionControl, Control, SmallControl } from './control.tsx';
import { LessonEditor } from './lesson-editor.tsx';
import { PlayerMore } from './player-more.tsx';
import { TimeLine } from './time-line.tsx';
import { TimeLineKey } from './time-line-key.tsx';

/**
 * The player of a recording, outside the frame: it belongs to the replay, not to the survey.
 * @param children what more there is to do with it now
 */
export function PlayerControls({ children }: { children?: ComponentChildren }) {
  const page = usePage();
  const replay = usePick((state) => state.replay);
  const finished = usePick(({ session }) => session?.ended === true);
  if (!replay) return null;
  return (
    <>
      {replay.writing && <LessonEditor replay={replay} />}
      <aside class="strip framed player" aria-label={say('Replay of a recording')}>
        <TimeLine replay={replay} />
        <div class="under-line">
          <p data-testid="player-time">
            {say('{at} of {length}', {
              at: lasting(msAt(replay, replay.place)),
              length: lasting(msAt(replay, endOf(replay))),
            })}
          </p>
          <TimeLineKey replay={replay} />
          <SmallControl action={writing} />
          <SmallControl action={beside} />
          <PlayerMore>{children}</PlayerMore>
        </div>
        <div class="player-row">
          <ActionControl action={playPause} main />
          <ActionControl action={stepBack} />
          <ActionControl action={step} />
          <ActionControl action={rewind} />
          <ActionControl action={toEnd} />
          <fieldset class="speeds" aria-label={say('Speed')}>
            {speeds.map((known) => (
              <Control
                key={known}
                word={`${known}×`}
                pressed={replay.speed === known}
                testId={`speed-${known}`}
                onClick={() => atSpeed(known)(page)}
              />
            ))}
          </fieldset>
          {!finished && <ActionControl action={working} />}
          <ActionControl action={leave} />
        </div>
      </aside>
    </>
  );
}
