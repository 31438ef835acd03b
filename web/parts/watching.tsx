import { usePick } from '../state/page.ts';
import { mayControl } from '../state/page-state.ts';
import { say } from '../words/say.ts';

/** On a device that may only watch: why nothing can be pressed, and what helps. */
export function Watching() {
  const watches = usePick((state) => state.greeted && !mayControl(state));
  const failed = usePick((state) => state.pairingFailed);
  if (!watches) return null;
  return (
    <p class="watching" role="note" data-testid="watching">
      <strong>{say('This device watches.')}</strong>{' '}
      {failed
        ? say('The code it was opened with was used before, or is too old: ask for a new one.')
        : say('To control from here, pair it: press Devices on the computer that Wayscribe runs on.')}
    </p>
  );
}
