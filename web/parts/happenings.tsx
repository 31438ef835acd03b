import { usePick } from '../state/page.ts';
import { happenings } from '../words/happenings.ts';

/** In a replay, what was done: in the place of the controls, which a replay doesn't have. */
export function Happenings() {
  const session = usePick((state) => state.session);
  if (!session) return null;
  return (
    <section class="happenings" aria-label="What was done">
      <h2>What was done</h2>
      <ol>
        {happenings(session, 4).map(({ seq, text }) => (
          <li key={seq}>{text}</li>
        ))}
      </ol>
    </section>
  );
}
