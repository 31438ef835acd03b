import { facingOf } from '../../shared/survey/way.ts';
import { instrumentOf, staleness } from '../state/needle.ts';
import { usePick } from '../state/page.ts';
import { placeNow } from '../state/page-state.ts';
import { lasting, liveWords } from '../words/live.ts';
import { useNow } from './use-now.ts';

/** What the level shows now, to be read from three metres; greyed, with its age, when it is not now any more. */
export function LiveReading() {
  const session = usePick((state) => state.session);
  const live = usePick((state) => state.live);
  const heardAt = usePick((state) => state.heardAt);
  const stale = usePick(staleness);
  const unitNow = usePick((state) => instrumentOf(state)?.unit);
  const now = useNow(stale !== null, 500);
  if (!session) return null;
  const walk = placeNow(session)?.walk ?? 'out';
  const { digits, unit, words } = liveWords(
    live,
    unitNow ?? session.setup.level.unit,
    facingOf(session.setup, walk),
  );
  const age = heardAt === null ? '' : `, last heard ${lasting(now - heardAt)} ago`;
  return (
    <section class={`live ${stale ? 'stale' : ''}`} aria-label="Live reading">
      <div
        class={`digits ${digits.length > 5 ? 'long' : ''}`}
        data-testid="live-value"
        data-value={live?.value ?? ''}
      >
        {digits}
      </div>
      {stale ? (
        <div class="metal age" data-testid="stale">{`${stale}${age}`}</div>
      ) : (
        <div class="metal">{`${unit}, ${words}`}</div>
      )}
    </section>
  );
}
