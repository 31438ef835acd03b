import { mute, surveying, theme } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { ActionControl, Control } from './control.tsx';

/** Outside the frame, because it is no part of the survey: the hand of the demo, and how the page looks and sounds. */
export function Strip() {
  const demo = usePick((state) => state.simulated !== null && surveying(state));
  return (
    <aside class="strip" aria-label="Outside the survey">
      {demo ? <DemoHand /> : <p />}
      <ActionControl action={mute} />
      <ActionControl action={theme} />
    </aside>
  );
}

function DemoHand() {
  const page = usePage();
  const simulated = usePick((state) => state.simulated);
  if (!simulated) return null;
  const { walking, lifted } = simulated;
  return (
    <>
      <p>The level and the bed of this demo are invented. Here you are the hand that moves the level.</p>
      <Control
        word={walking ? 'Walks by itself' : 'Walk by itself'}
        hint={walking ? 'press to stop' : 'watch it happen'}
        pressed={walking}
        testId="sim-walk"
        onClick={() => void page.send({ do: 'sim-walk', on: !walking })}
      />
      <Control word="Lift" disabled={walking || lifted} testId="sim-lift" onClick={() => void page.send({ do: 'sim-lift' })} />
      <Control
        word="Set down"
        disabled={walking || !lifted}
        testId="sim-set-down"
        onClick={() => void page.send({ do: 'sim-set-down' })}
      />
      <Control word="Push" disabled={lifted} testId="sim-push" onClick={() => void page.send({ do: 'sim-push' })} />
    </>
  );
}
