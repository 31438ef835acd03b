import { useEffect, useState } from 'preact/hooks';
import type { RecordingList } from '../../../shared/api.ts';
import { askRecordings } from '../../state/api.ts';
import { takeFile, takeRecording } from '../../state/job-api.ts';
import { dayText } from '../../words/job.ts';
import { say } from '../../words/say.ts';
import { Choice, Field } from '../field.tsx';
import type { Desk } from './desk.ts';

/** Recordings of this computer, and sheets, recordings and photographs from files. Copies: what is there stays as it is. */
export function BringIn({ desk }: { desk: Desk }) {
  const { id, job } = desk.open;
  const [list, setList] = useState<RecordingList>([]);
  useEffect(() => void askRecordings().then((found) => setList(found ?? [])), []);
  const [recording, setRecording] = useState('');
  const [surface, setSurface] = useState(desk.surface?.name ?? '');
  const [round, setRound] = useState('');
  const [file, setFile] = useState<File | null>(null);
  const [told, setTold] = useState('');
  const kept = new Set(desk.open.surveys.map(({ session }) => session?.header.id));
  const free = list.filter((each) => each.ended && !kept.has(each.id));
  const same = (each: RecordingList[number]) => each.part === job.head.part;
  const sorted = [...free.filter(same), ...free.filter((each) => !same(each))];
  const asked = {
    by: desk.by.trim() || '?',
    ...(surface.trim() && { surface: surface.trim() }),
    ...(round.trim() && { round: round.trim() }),
  };
  const bring = async () => {
    if (!file && !recording) return;
    const { found, error } = await (file
      ? takeFile(id, file, asked)
      : takeRecording(id, recording, { by: asked.by }));
    if (await desk.settle(error)) return;
    setTold(found?.file ?? '');
    setFile(null);
    setRecording('');
  };
  return (
    <details class="fold">
      <summary data-testid="bring-in-fold">{say('Bring a survey or a file in')}</summary>
      <form
        class="bring-in"
        onSubmit={(event) => {
          event.preventDefault();
          void bring();
        }}
      >
        <div class="fields two">
          {sorted.length > 0 && (
            <Choice
              label={say('A survey of this computer')}
              name="recording"
              value={recording}
              options={[
                ['', say('none')],
                ...sorted.map(
                  (each) =>
                    [
                      each.id,
                      say('{surface}, {round}, {day}, {part}', {
                        surface: each.surface,
                        round: each.round,
                        part: each.part,
                        day: dayText(new Date(each.t).toISOString()),
                      }),
                    ] as const,
                ),
              ]}
              onChoose={setRecording}
            />
          )}
          <div class="field">
            <label for="bring-file">{say('or a file: recording, sheet or photograph')}</label>
            <input
              id="bring-file"
              type="file"
              accept=".jsonl,.json,.csv,.jpg,.jpeg,.png,.webp,.heic"
              data-testid="bring-file"
              onChange={(event) => setFile(event.currentTarget.files?.[0] ?? null)}
            />
          </div>
          {file && <Field label={say('Surface')} name="bring-surface" value={surface} onInput={setSurface} />}
          {file && (
            <Field
              label={say('Round')}
              name="bring-round"
              value={round}
              hint={say('as the file says, when left open')}
              onInput={setRound}
            />
          )}
        </div>
        <button type="submit" class="small" disabled={!file && !recording} data-testid="bring-in">
          {say('Take a copy into the job')}
        </button>
        {told !== '' && <p role="status">{say('{file} is in the job.', { file: told })}</p>}
      </form>
    </details>
  );
}
