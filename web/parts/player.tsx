import { leave, working } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { playPause, rewind, speeds, step, toEnd } from '../state/player-actions.ts';
import { lasting } from '../words/live.ts';
import { ActionControl, Control, Row } from './control.tsx';

/** The player of a recording, in the place of the survey's controls: a replay takes no takes. */
export function Player() {
  const page = usePage();
  const player = usePick((state) => state.player);
  const count = usePick((state) => state.session?.counted.size ?? 0);
  if (!player) return null;
  const { atMs, lengthMs, speed } = player;
  return (
    <div class="player" role="group" aria-label="Replay of a recording">
      <div>
        <progress value={atMs} max={Math.max(1, lengthMs)} aria-label="Time into the recording" />
        <p class="caption-line" data-testid="player-time">
          {`${lasting(atMs)} of ${lasting(lengthMs)}, ${count} readings that count`}
        </p>
      </div>
      <Row>
        <ActionControl action={playPause} />
        <ActionControl action={step} />
        <ActionControl action={rewind} />
        <ActionControl action={toEnd} />
        <ActionControl action={working} />
        <ActionControl action={leave} />
      </Row>
      <Row>
        {speeds.map((known) => (
          <Control
            key={known}
            word={`${known}×`}
            hint={known === 1 ? 'as it was' : 'faster'}
            pressed={speed === known}
            testId={`speed-${known}`}
            onClick={() => void page.send({ do: 'speed', speed: known })}
          />
        ))}
      </Row>
    </div>
  );
}
