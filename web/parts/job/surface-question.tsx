import { useState } from 'preact/hooks';
import type { AskedChange } from '../../../shared/job/wire.ts';
import { figureWords, listedFigures } from '../../../shared/report/history.ts';
import { capital } from '../../../shared/report/words.ts';
import { usePage } from '../../state/page.ts';
import { nothing } from '../../state/page-state.ts';
import { readNumber } from '../../words/numbers.ts';
import { say } from '../../words/say.ts';
import { Choice, Field } from '../field.tsx';
import { type Desk, historyOf } from './desk.ts';
import { JobForm } from './job-form.tsx';

const another = '';

/** A surface, what it was made from, and what was agreed for it, with the source. */
export function SurfaceQuestion({ desk }: { desk: Desk }) {
  const page = usePage();
  const { job } = desk.open;
  const surfaces = [...job.surfaces.keys()];
  const [chosen, setChosen] = useState(desk.surface?.name ?? another);
  const [typed, setTyped] = useState('');
  const name = chosen === another ? typed.trim() : chosen;
  const known = job.surfaces.get(name);
  const [madeFrom, setMadeFrom] = useState<readonly string[] | null>(null);
  const from = madeFrom ?? known?.madeFrom ?? [];
  const history = historyOf(desk.open, known ?? null);
  const figures = history ? listedFigures(history) : [`${name}.straightness`];
  const [figure, setFigure] = useState('');
  const limited = figures.includes(figure) ? figure : (figures[0] ?? '');
  const old = known?.limits.find((each) => each.figure === limited);
  const [max, setMax] = useState<string | null>(null);
  const [source, setSource] = useState<string | null>(null);
  const maxText = max ?? (old ? String(old.max) : '');
  const sourceText = source ?? old?.source ?? '';
  const value = readNumber(maxText);
  const wrongMax =
    maxText.trim() !== '' && (value === null || value < 0) ? say('This is no limit.') : undefined;
  const wrongSource =
    value !== null && sourceText.trim() === '' ? say('Where does it come from?') : undefined;
  const answer = async () => {
    if (!name || wrongMax || (value !== null && !sourceText.trim())) return;
    const changes: AskedChange[] = [];
    if (!known || from.join() !== known.madeFrom.join()) {
      changes.push({ change: 'surface', surface: name, madeFrom: [...from] });
    }
    if (value !== null && (value !== old?.max || sourceText !== old.source)) {
      const others = known?.limits.filter((each) => each.figure !== limited) ?? [];
      const limit = { figure: limited, max: value, source: sourceText };
      changes.push({ change: 'limits', surface: name, limits: [...others, limit] });
    }
    if (changes.length > 0 && (await desk.write(...changes))) return;
    const { job: looking } = page.store.get();
    page.change({ pointing: nothing, job: looking && { ...looking, surface: name } });
  };
  return (
    <JobForm
      title={say('Which surface, made from what, within which limits?')}
      answer={say('Agreed')}
      disabled={!name || wrongMax !== undefined}
      onAnswer={answer}
    >
      <div class="fields">
        <Choice
          label={say('Surface')}
          name="surface"
          value={chosen}
          options={[...surfaces.map((each) => [each, each] as const), [another, say('a new one')]]}
          onChoose={(next) => {
            setChosen(next);
            setMadeFrom(null);
            setMax(null);
            setSource(null);
          }}
        />
        {chosen === another && (
          <Field label={say('Its name')} name="new-surface" value={typed} focus onInput={setTyped} />
        )}
      </div>
      {surfaces.some((each) => each !== name) && (
        <fieldset class="checks">
          <legend>{say('Made from')}</legend>
          {surfaces
            .filter((each) => each !== name)
            .map((each) => (
              <label key={each} class="check">
                <input
                  type="checkbox"
                  checked={from.includes(each)}
                  onChange={(event) =>
                    setMadeFrom(
                      event.currentTarget.checked ? [...from, each] : from.filter((other) => other !== each),
                    )
                  }
                />
                {each}
              </label>
            ))}
        </fieldset>
      )}
      <div class="fields">
        <Choice
          label={say('Limit of')}
          name="figure"
          value={limited}
          options={figures.map((each) => [each, capital(figureWords(each))] as const)}
          onChoose={setFigure}
        />
        <Field label={say('At most')} name="limit" value={maxText} error={wrongMax} onInput={setMax} />
        <Field
          label={say('Source: sheet of the maker, standard, agreement')}
          name="source"
          value={sourceText}
          error={wrongSource}
          onInput={setSource}
        />
      </div>
    </JobForm>
  );
}
