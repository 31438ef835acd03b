import { useState } from 'preact/hooks';
import type { AskedChange } from '../../../shared/job/wire.ts';
import { takeFile } from '../../state/job-api.ts';
import { usePage } from '../../state/page.ts';
import { nothing } from '../../state/page-state.ts';
import { readNumber } from '../../words/numbers.ts';
import { say } from '../../words/say.ts';
import { Field } from '../field.tsx';
import type { Desk } from './desk.ts';
import { JobForm } from './job-form.tsx';

type Print = Extract<AskedChange, { change: 'print' }>;

interface Seen {
  readonly shows: boolean;
  readonly points: string;
  readonly share: string;
}

const unseen: Seen = { shows: false, points: '', share: '' };

/** What the blue shows, on the stations of the survey, with a photograph that is kept by its digest. */
export function PrintQuestion({ desk }: { desk: Desk }) {
  const page = usePage();
  const { history, surface } = desk;
  const names = history
    ? Object.values(history.newest.sheet.lines).flat().length > 0 && history.newest.result.kind !== 'plate'
      ? [...new Set(Object.values(history.newest.sheet.lines).flat())]
      : history.newest.heights.names
    : [];
  const [against, setAgainst] = useState(
    () =>
      history?.surveys.findLast(({ session }) => session?.prints.length)?.session?.prints[0]?.against ?? '',
  );
  const [stations, setStations] = useState<Readonly<Record<string, Seen>>>({});
  const [turns, setTurns] = useState('');
  const [photo, setPhoto] = useState<File | null>(null);
  const [busy, setBusy] = useState(false);
  const seen = (name: string) => stations[name] ?? unseen;
  const change = (name: string, part: Partial<Seen>) =>
    setStations({ ...stations, [name]: { ...seen(name), ...part } });
  const hinges = turns
    .split(/[;,]?\s+|;/)
    .filter(Boolean)
    .map(readNumber);
  const wrongTurns =
    hinges.length > 4 || hinges.some((x) => x === null)
      ? say('Up to four places in mm, with spaces between.')
      : undefined;
  const shown = names.filter((name) => seen(name).shows);

  const answer = async () => {
    if (!surface || !against.trim() || wrongTurns || busy) return;
    setBusy(true);
    const kept = photo
      ? await takeFile(desk.open.id, photo, {
          by: desk.by,
          words: say('print of {surface}, {round}', {
            surface: surface.name,
            round: history?.newest.record.round ?? '',
          }),
        })
      : null;
    const refused = kept?.error
      ? await desk.settle(kept.error)
      : await desk.write({
          change: 'print',
          surface: surface.name,
          against,
          stations: Object.fromEntries(names.map((name) => [name, told(seen(name))])),
          ...(hinges.length > 0 && { hingesMm: hinges.filter((x) => x !== null) }),
          ...(kept && { photo: kept.found }),
        });
    setBusy(false);
    if (!refused) page.point(nothing);
  };
  return (
    <JobForm
      title={say('Where does the blue show?')}
      answer={busy ? say('Keeping it') : say('Keep the print')}
      disabled={!against.trim() || wrongTurns !== undefined || busy}
      onAnswer={answer}
    >
      <p>
        {shown.length === 0
          ? say('Press every station that took colour.')
          : say(
              'Shows at {count} of {all} stations. Points in a square inch and bearing share are as you counted them; leave open what you did not.',
              {
                count: shown.length,
                all: names.length,
              },
            )}
      </p>
      <div class="print-stations">
        {names.map((name) => {
          const { shows, points, share } = seen(name);
          return (
            <div key={name} class="print-station">
              <button
                type="button"
                class="control"
                aria-pressed={shows}
                data-testid={`print-${name}`}
                onClick={() => change(name, { shows: !shows })}
              >
                <span class="word">{name}</span>
                <span class="hint">{shows ? say('shows') : say('bare')}</span>
              </button>
              {shows && (
                <>
                  <input
                    aria-label={say('Points per square inch at {name}', { name })}
                    placeholder={say('points')}
                    inputMode="numeric"
                    value={points}
                    onInput={(event) => change(name, { points: event.currentTarget.value })}
                  />
                  <input
                    aria-label={say('Share of the area that bears at {name}, %', { name })}
                    placeholder="%"
                    inputMode="numeric"
                    value={share}
                    onInput={(event) => change(name, { share: event.currentTarget.value })}
                  />
                </>
              )}
            </div>
          );
        })}
      </div>
      <div class="fields">
        <Field
          label={say('Straightedge or plate that carried the ink')}
          name="against"
          value={against}
          onInput={setAgainst}
        />
        <Field
          label={say('Turns at, mm from the start, when it is swung')}
          name="turns"
          value={turns}
          error={wrongTurns}
          onInput={setTurns}
        />
        <div class="field">
          <label for="print-photo">{say('Photograph, kept in the job')}</label>
          <input
            id="print-photo"
            type="file"
            accept=".jpg,.jpeg,.png,.webp,.heic"
            data-testid="photo"
            onChange={(event) => setPhoto(event.currentTarget.files?.[0] ?? null)}
          />
        </div>
      </div>
    </JobForm>
  );
}

/** What was seen at a station; what is no number was not counted. */
function told({ shows, points, share }: Seen): Print['stations'][string] {
  const [counted, percent] = [readNumber(points), readNumber(share)];
  return {
    shows,
    ...(shows && counted !== null && { pointsPerInch2: Math.min(1000, Math.max(0, counted)) }),
    ...(shows && percent !== null && { coverage: Math.min(1, Math.max(0, percent / 100)) }),
  };
}
