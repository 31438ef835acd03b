import { exportPath } from '../state/api.ts';
import { usePick } from '../state/page.ts';
import { ActionStrip } from './action-strip.tsx';
import { PlayerControls } from './player.tsx';

/** Beside the finished sheet: what can be taken home, or the player when it was a replay. */
export function ResultStrip() {
  const id = usePick((state) => state.session?.header.id);
  const replay = usePick((state) => state.player !== null);
  return (
    <>
      {replay && <PlayerControls />}
      <ActionStrip looks={!replay}>
        <p class="right">Take home</p>
        {id && <Exports id={id} />}
      </ActionStrip>
    </>
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
