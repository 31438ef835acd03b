import type { Session } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { toCsv } from '../../shared/session/to-csv.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { exportPath } from '../state/api.ts';
import { usePick } from '../state/page.ts';
import { saveFile } from '../state/save-file.ts';
import { ActionStrip } from './action-strip.tsx';
import { PlayerControls } from './player.tsx';

/** Beside the finished sheet: what can be taken home, or the player when it was a replay. */
export function ResultStrip() {
  const id = usePick((state) => state.session?.header.id);
  const replay = usePick((state) => state.replay);
  const session = usePick((state) => state.session);
  if (session && replay) {
    return (
      <PlayerControls>
        <p>Take home</p>
        <OwnExports session={session} />
      </PlayerControls>
    );
  }
  return (
    <ActionStrip>
      <p class="right">Take home</p>
      {id && <Exports id={id} />}
    </ActionStrip>
  );
}

function Exports({ id }: { id: string }) {
  const reference = usePick((state) => state.reference);
  return (
    <nav class="exports" aria-label="Take home">
      <a class="small" href={exportPath(id, '')} download={`${id}.jsonl`} data-testid="export-recording">
        Recording
      </a>
      <a
        class="small"
        href={exportPath(id, '/sheet.json')}
        download={`${id}-sheet.json`}
        data-testid="export-sheet"
      >
        Sheet
      </a>
      <a class="small" href={exportPath(id, '/readings.csv')} download={`${id}.csv`} data-testid="export-csv">
        Readings as a table
      </a>
      <a
        class="small"
        href={exportPath(id, `/result.json?reference=${reference}`)}
        download={`${id}-result.json`}
        data-testid="export-result"
      >
        Result
      </a>
    </nav>
  );
}

/** The same from a recording that the page holds by itself. */
function OwnExports({ session }: { session: Session }) {
  const text = usePick(({ replay }) => replay?.playback.text ?? '');
  const { id } = session.header;
  const json = (document: unknown) => `${JSON.stringify(document, null, 2)}\n`;
  const files: readonly (readonly [word: string, name: string, make: () => string])[] = [
    ['Recording', `${id}.jsonl`, () => text],
    ['Sheet', `${id}-sheet.json`, () => json(toSheet(session))],
    ['Readings as a table', `${id}.csv`, () => toCsv(session)],
    ['Result', `${id}-result.json`, () => json(resultOf(session))],
  ];
  return (
    <nav class="exports" aria-label="Take home">
      {files.map(([word, name, make]) => (
        <button key={name} type="button" class="small" onClick={() => saveFile(name, make())}>
          {word}
        </button>
      ))}
    </nav>
  );
}
