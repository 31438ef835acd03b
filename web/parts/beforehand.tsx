import { usePage, usePick } from '../state/page.ts';
import { cautionsOf } from '../words/cautions.ts';
import { say } from '../words/say.ts';
import { Triangle } from './notice-line.tsx';

/** Before the first take: stone, wipe, feel, and what can hurt. It bars nothing, and the first take puts it away. */
export function Beforehand() {
  const page = usePage();
  const session = usePick((state) => state.session);
  const put = usePick((state) => state.putAway);
  const replay = usePick((state) => state.replay !== null);
  if (!session || replay || session.takes.length > 0 || put === session.header.id) return null;
  const { kind } = session.setup;
  return (
    <section class="beforehand" aria-label={say('Before the first reading')} data-testid="beforehand">
      <h2>{say('Before the first reading')}</h2>
      <ol>
        <li>{say('Stone: a flat stone takes the burrs off, edges and marks too.')}</li>
        <li>{say('Wipe: the metal, and what stands on it.')}</li>
        <li>{say('Feel: a clean palm finds the grit that the eye misses.')}</li>
      </ol>
      <div class="cautions">
        {cautionsOf(kind).map((caution) => (
          <p key={caution} class="caution">
            <Triangle />
            <span>{caution}</span>
          </p>
        ))}
      </div>
      <button
        type="button"
        class="small"
        data-testid="beforehand-away"
        onClick={() => page.change({ putAway: session.header.id })}
      >
        {say('Put this away')}
      </button>
    </section>
  );
}
