import type { Session } from '../../shared/session/fold.ts';
import type { Run } from '../../shared/survey/plan.ts';
import { instrumentOf, staleness } from '../state/needle.ts';
import { runNow } from '../state/on-plan.ts';
import { usePick } from '../state/page.ts';
import { placeNow } from '../state/page-state.ts';
import { lasting, liveWords, tipWords } from '../words/live.ts';
import { useNow } from './use-now.ts';

/** What the instrument shows now, to be read from three metres; greyed, with its age, when it is not now any more. */
export function LiveReading() {
  const session = usePick((state) => state.session);
  const live = usePick((state) => state.live);
  const heardAt = usePick((state) => state.heardAt);
  const stale = usePick(staleness);
  const unitNow = usePick((state) => instrumentOf(state)?.unit);
  const now = useNow(stale !== null, 500);
  const run = session && runNow(session);
  if (!session || !run) return null;
  const shown = unitNow ?? session.setup.instrument.unit;
  const { digits, unit, words } =
    run.reads === 'tilt'
      ? liveWords(live, shown, run.facing, farFoot(session, run))
      : tipWords(live, shown, run.sense, sweepBegan(session, run));
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

/** The foot that a level tells of: the far one, or on a bed and a plate the one at its station. */
function farFoot(session: Session, run: Run): string {
  if (session.setup.kind === 'bed' && run.id === 'across') return 'rear foot';
  if (session.setup.kind !== 'plate') return 'far foot';
  return `foot on ${placeNow(session)?.at[1] ?? 'the far side'}`;
}

/** The first reading of the sweep that is on; sizes over pins stand for themselves. */
function sweepBegan(session: Session, run: Run): { value: number; name: string } | null {
  if (run.reads !== 'height' || run.offset === 'known') return null;
  const first = session.takes.find(({ event, out }) => event.place.run === run.id && out === undefined);
  return first ? { value: first.event.value, name: first.event.place.at[0] } : null;
}
