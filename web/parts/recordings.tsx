import { useEffect, useState } from 'preact/hooks';
import type { RecordingList } from '../../shared/api.ts';
import { askRecordings, exportPath } from '../state/api.ts';
import { openRecording } from '../state/open-files.ts';
import { usePage, usePick } from '../state/page.ts';
import { mayControl } from '../state/page-state.ts';
import { dateText, timeText } from '../words/quantity.ts';

/** What was recorded, newest first: to be played again, or gone on with. */
export function Recordings() {
  const page = usePage();
  const controls = usePick(mayControl);
  const [list, setList] = useState<RecordingList | null | 'asking'>('asking');
  useEffect(() => void askRecordings().then(setList), []);
  if (list === 'asking') return null;
  if (list === null) return <p class="wrong">The list of recordings could not be read.</p>;
  if (list.length === 0) return <p class="soft">Nothing has been recorded yet.</p>;
  return (
    <section aria-labelledby="recordings-title">
      <h2 id="recordings-title">Recordings</h2>
      <table class="recordings" data-testid="recordings">
        <thead>
          <tr>
            <th scope="col">When</th>
            <th scope="col">Part and surface</th>
            <th scope="col">Round</th>
            <th scope="col">By</th>
            <th scope="col">Readings</th>
            <th scope="col">
              <span class="unseen">What to do with it</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {list.map(({ id, t, part, surface, round, operator, takes, planned, ended, simulated }) => (
            <tr key={id}>
              <td>{`${dateText(t)}, ${timeText(t)}`}</td>
              <td>{`${part}, ${surface}${simulated ? ' (simulated)' : ''}`}</td>
              <td class="minor">{round}</td>
              <td class="minor">{operator}</td>
              <td>{`${takes} of ${planned}${ended ? '' : ', not finished'}`}</td>
              <td class="do">
                {!ended && (
                  <button
                    type="button"
                    class="small"
                    disabled={!controls}
                    onClick={() => void page.send({ do: 'resume', id })}
                  >
                    Go on
                  </button>
                )}
                <button
                  type="button"
                  class="small"
                  onClick={() => void openRecording(page, exportPath(id, ''))}
                >
                  Replay
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
