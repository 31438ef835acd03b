import { useEffect } from 'preact/hooks';
import { type ProvedInstrument, provedSentence } from '../../shared/proving/instruments.ts';
import { Choice } from '../parts/field.tsx';
import { portsLike } from '../parts/proving/alike-ports.ts';
import { contradictions } from '../words/contradictions.ts';
import { kindWords } from '../words/kinds.ts';
import { readNumber } from '../words/numbers.ts';
import { say } from '../words/say.ts';
import type { SetupForm } from './fields.ts';
import type { InstrumentFieldsProps } from './instrument-props.ts';
import type { Plugged } from './plugged.ts';
import { provedFields } from './proved-fields.ts';
import { anotherPort } from './setup-form.ts';

/** What was proved of the instrument that the form names. */
export function provedNow({ known }: Plugged, form: SetupForm): ProvedInstrument | undefined {
  return known?.find(({ proved }) => proved.proving.name === form.name && isFor(form, proved))?.proved;
}

function isFor({ kind }: SetupForm, { proving }: ProvedInstrument): boolean {
  return proving.reads === kindWords[kind].reads;
}

/** The instruments that were proved before: to be taken over, and to be warned by when the form says otherwise. */
export function ProvedBefore({ plugged, form, fill, onFind }: InstrumentFieldsProps) {
  const known = plugged.known?.filter(({ proved }) => isFor(form, proved)) ?? [];
  const now = known.find(({ proved }) => proved.proving.name === form.name);
  const pluggedIn = known.find(({ is }) => is === 'found');
  useEffect(() => {
    const untouched = form.source === 'cable' && form.port === '' && form.profile === '';
    if (pluggedIn && untouched) fill(provedFields(pluggedIn.proved));
  }, [pluggedIn?.proved.proving.name]);
  if (known.length === 0) return null;
  const choose = (name: string) => {
    const chosen = known.find(({ proved }) => proved.proving.name === name);
    fill(chosen ? provedFields(chosen.proved) : { name: '', sigma: '' });
  };
  return (
    <>
      <Choice
        label={say('Proved before')}
        name="proved"
        wide
        value={now ? form.name : ''}
        options={[
          ['', say('another one, not proved')],
          ...known.map(({ proved, is }) => {
            const { name } = proved.proving;
            const where = is === 'absent' ? say('{name}, not plugged in', { name }) : name;
            return [name, where] as const;
          }),
        ]}
        onChoose={choose}
      />
      {now && (
        <p class="soft wide proved" data-testid="proved-now">
          {say('{sentence}, {day}.', { sentence: provedSentence(now.proved), day: now.proved.day })}
        </p>
      )}
      {now &&
        contradictions(claimOf(form), now.proved).map((sentence) => (
          <p key={sentence} class="wide-note wide notice" role="alert" data-testid="contradiction">
            {sentence}
          </p>
        ))}
      {now?.is === 'tie' && (
        <AskToMove
          text={say('{name} is not in its socket, and adapters like its own are plugged in.', {
            name: form.name,
          })}
          onFind={() => onFind(portsLike(now.proved.proving.port, plugged.list?.ports ?? []))}
        />
      )}
    </>
  );
}

/** What the form says of the instrument. */
function claimOf(form: SetupForm) {
  const { source, port, portPath, profile, unit, graduation, sigma, plus } = form;
  const cable = source === 'cable';
  return {
    // One that poses as a keyboard was proved as one that is typed.
    source: cable ? 'cable' : 'typed',
    port: cable ? (port === anotherPort ? portPath.trim() : port) : undefined,
    profile: cable ? profile : undefined,
    unit,
    graduation: cable ? 1 : readNumber(graduation),
    sigma: readNumber(sigma),
    plus: kindWords[form.kind].reads === 'height' && form.kind !== 'dovetail' ? plus : undefined,
  };
}

/** It can't be told which adapter it is: the person moves it. */
export function AskToMove({ text, onFind }: { text: string; onFind(): void }) {
  return (
    <p class="wide-note wide notice" data-testid="alike">
      {text}{' '}
      <button type="button" class="small" data-testid="move-this-one" onClick={onFind}>
        {say('Move this one')}
      </button>
    </p>
  );
}
