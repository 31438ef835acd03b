import { surveying } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { ActionStrip } from './action-strip.tsx';
import { Control } from './control.tsx';
import { PlayerControls } from './player.tsx';

/** In the demo, the hand that moves the level: visibly apart from what belongs to the survey. */
export function Strip() {
  const demo = usePick((state) => state.simulated !== null && surveying(state));
  const replay = usePick((state) => state.replay !== null);
  if (replay) return <PlayerControls />;
  return demo ? (
    <ActionStrip framed>
      <DemoHand />
    </ActionStrip>
  ) : (
    <ActionStrip />
  );
}

function DemoHand() {
  const page = usePage();
  const simulated = usePick((state) => state.simulated);
  if (!simulated) return null;
  const { walking, lifted } = simulated;
  return (
    <>
      <p>Instrument and machine of this demo are invented. You are the hand that moves the instrument.</p>
      <Control
        word={walking ? 'Walks by itself' : 'Walk by itself'}
        hint={walking ? 'press to stop' : 'watch it happen'}
        pressed={walking}
        testId="sim-walk"
        onClick={() => void page.send({ do: 'sim-walk', on: !walking })}
      />
      <Control
        word="Lift"
        hint="off the metal"
        disabled={walking || lifted}
        testId="sim-lift"
        onClick={() => void page.send({ do: 'sim-lift' })}
      />
      <Control
        word="Set down"
        hint="on the next place"
        disabled={walking || !lifted}
        testId="sim-set-down"
        onClick={() => void page.send({ do: 'sim-set-down' })}
      />
      <Control
        word="Push"
        hint="a bump"
        disabled={lifted}
        testId="sim-push"
        onClick={() => void page.send({ do: 'sim-push' })}
      />
    </>
  );
}
