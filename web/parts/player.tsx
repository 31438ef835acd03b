import { mute, theme } from '../state/look-actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { playPause, replaying, rewind, speeds, step, toEnd } from '../state/player-actions.ts';
import { leave } from '../state/result-actions.ts';
import { lasting } from '../words/live.ts';
import { ActionControl, Control, SmallControl } from './control.tsx';

/** The player of a recording, outside the frame: it belongs to the replay, not to the survey. */
export function PlayerControls() {
  const page = usePage();
  const player = usePick((state) => state.player);
  const can = usePick(replaying);
  if (!player) return null;
  const { atMs, lengthMs, speed } = player;
  return (
    <aside class="strip framed player" aria-label="Replay of a recording">
      <div class="time">
        <progress value={atMs} max={Math.max(1, lengthMs)} aria-label="Time into the recording" />
        <p data-testid="player-time">{`${lasting(atMs)} of ${lasting(lengthMs)}`}</p>
      </div>
      <ActionControl action={playPause} />
      <ActionControl action={step} />
      <ActionControl action={rewind} />
      <ActionControl action={toEnd} />
      {speeds.map((known) => (
        <Control
          key={known}
          word={`${known}×`}
          pressed={speed === known}
          disabled={!can}
          testId={`speed-${known}`}
          onClick={() => void page.send({ do: 'speed', speed: known })}
        />
      ))}
      <ActionControl action={leave} />
      <SmallControl action={mute} />
      <SmallControl action={theme} />
    </aside>
  );
}
