import { useEffect, useState } from 'preact/hooks';
import type { RecordingList } from '../../shared/api.ts';
import type { Session } from '../../shared/session/fold.ts';
import { askRecordings, exportPath } from '../state/api.ts';
import { layBeside } from '../state/open-files.ts';
import { usePage } from '../state/page.ts';
import { dateText } from '../words/quantity.ts';
import { say } from '../words/say.ts';

/** Which recording to hold against the one that is open: of those that the daemon has, or from a file. */
export function BesideChoice({ first }: { first: Session }) {
  const page = usePage();
  const [list, setList] = useState<RecordingList>([]);
  useEffect(() => void askRecordings().then((known) => setList(known ?? [])), []);
  const { header, setup } = first;
  const others = list.filter(({ id }) => id !== header.id);
  const same = others.filter(({ part, surface }) => part === setup.part && surface === setup.surface);
  const rest = others.filter((recording) => !same.includes(recording));
  return (
    <section class="beside-choice" data-testid="beside-choice">
      {same.length > 0 && <Choices recordings={same} />}
      {rest.length > 0 && (
        <details open={same.length === 0}>
          <summary>{say('Of other parts, or under another name')}</summary>
          <Choices recordings={rest} />
        </details>
      )}
      <label class="small file-opener">
        {say('Choose a recording from a file')}
        <input
          type="file"
          accept=".jsonl"
          class="unseen"
          data-testid="beside-file"
          onChange={(event) => {
            const [file] = event.currentTarget.files ?? [];
            if (file) void layBeside(page, file);
          }}
        />
      </label>
    </section>
  );
}

function Choices({ recordings }: { recordings: RecordingList }) {
  const page = usePage();
  return (
    <ul>
      {recordings.map(({ id, t, part, surface, round, operator, takes }) => (
        <li key={id}>
          <button
            type="button"
            class="small"
            data-testid={`beside-${id}`}
            onClick={() => void layBeside(page, exportPath(id, ''))}
          >
            {say('{recording}: {count} readings', {
              recording: [dateText(t), part, surface, round, operator].filter(Boolean).join(', '),
              count: takes,
            })}
          </button>
        </li>
      ))}
    </ul>
  );
}
