import { useState } from 'preact/hooks';
import { say } from '../words/say.ts';

/** What has to be said with a result, in a line or two; all of it when it is asked for. */
export function Notes({ notes }: { notes: readonly string[] }) {
  const [all, setAll] = useState(false);
  if (notes.length === 0) return null;
  return (
    <div class="notes" data-all={all}>
      <p data-testid="notes">{notes.join(' ')}</p>
      <button type="button" class="small" aria-expanded={all} onClick={() => setAll(!all)}>
        {all ? say('Less') : notes.length === 1 ? say('The note') : say('All {n} notes', { n: notes.length })}
      </button>
    </div>
  );
}
