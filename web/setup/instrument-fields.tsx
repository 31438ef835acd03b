import type { PortList } from '../../shared/api.ts';
import type { ProvedInstrument } from '../../shared/proving/instruments.ts';
import { heightUnits, tiltUnits } from '../../shared/units.ts';
import { Choice } from '../parts/field.tsx';
import { nameOf, portsLike } from '../parts/proving/alike-ports.ts';
import { capital, instrumentWord, kindWords } from '../words/kinds.ts';
import { unitWord } from '../words/live.ts';
import { say } from '../words/say.ts';
import { Entries, type FieldsProps } from './entries.tsx';
import type { SetupForm } from './fields.ts';
import type { InstrumentFieldsProps } from './instrument-props.ts';
import type { Entry } from './layout.ts';
import { AskToMove, ProvedBefore, provedNow } from './proved-before.tsx';
import { anotherPort } from './setup-form.ts';

/** The instrument that the kind needs: on a cable, or read by eye and typed. */
export function InstrumentFields(fields: InstrumentFieldsProps) {
  const { form, set, plugged } = fields;
  const tilt = kindWords[form.kind].reads === 'tilt';
  const word = instrumentWord(form.kind);
  const change = (source: string) => {
    set('source')(source);
    const usual = usualReading(form, source);
    set('unit')(usual.unit);
    set('graduation')(usual.graduation);
    set('sigma')(usual.sigma);
  };
  return (
    <fieldset>
      <legend>{`The ${word}`}</legend>
      <div class="fields two">
        <ProvedBefore {...fields} />
        <Choice
          label="Its readings come"
          name="source"
          value={form.source}
          options={[
            ['cable', 'over a cable'],
            ['typed', 'from my eye, typed'],
            ['keyed', say('from itself, as a keyboard')],
          ]}
          onChoose={change}
        />
        <Entries {...fields} entries={[{ field: 'name', label: 'Called' }]} />
        {form.source === 'cable' ? <Cable {...fields} /> : <Typed {...fields} />}
        <Entries {...fields} entries={[...senseEntries(form, provedNow(plugged, form)), spreadEntry(form)]} />
        <p class="soft field-beside">{tryIt(form, tilt)}</p>
      </div>
    </fieldset>
  );
}

/** What one reading usually is, by where it comes from. */
function usualReading({ kind }: SetupForm, source: string) {
  const tilt = kindWords[kind].reads === 'tilt';
  if (source !== 'typed') return { unit: tilt ? 'um/m' : 'mm', graduation: '1', sigma: '' };
  if (kind === 'dovetail' || kind === 'collars' || kind === 'face')
    return { unit: 'mm', graduation: '1', sigma: '0.002' };
  return tilt
    ? { unit: 'mm/m', graduation: '0.02', sigma: '0.2' }
    : { unit: 'um', graduation: '1', sigma: '0.5' };
}

function senseEntries({ kind, startEnd, farEnd }: SetupForm, proved: ProvedInstrument | undefined): Entry[] {
  const faces = (far: string, start: string): Entry => ({
    field: 'faces',
    label: plusEndLabel(proved),
    options: [
      ['far', far],
      ['start', start],
    ],
  });
  switch (kind) {
    case 'way':
      return [faces(farEnd || 'the far end', startEnd || 'the start end')];
    case 'bed':
      return [
        faces(farEnd || 'the far end', startEnd || 'the start end'),
        {
          field: 'crossFaces',
          label: 'And across, on its bridge, to',
          options: [
            ['far', 'the rear way'],
            ['start', 'the front way'],
          ],
        },
      ];
    case 'plate':
      return [faces('the end of each line', 'its start')];
    case 'dovetail':
    case 'collars':
      return [];
    default:
      return [
        {
          field: 'plus',
          label: 'Plus says that the metal is',
          options: [
            ['high', 'high: it pushes the tip in'],
            ['low', 'low: the tip comes out'],
          ],
        },
      ];
  }
}

/** Which end of the level is its plus end, where that was proved. */
function plusEndLabel(proved: ProvedInstrument | undefined): string {
  if (proved?.proving.reads !== 'tilt') return say('Its plus end points to');
  const { sign, proving } = proved;
  return sign > 0
    ? say('Its plus end ({end}) points to', { end: proving.far })
    : say('Its plus end (not the {end}) points to', { end: proving.far });
}

function spreadEntry({ source, unit, graduation }: SetupForm): Entry {
  const counted = graduation === '1' || source === 'cable' ? unitWord(unit) : say('graduations');
  return {
    field: 'sigma',
    label:
      source === 'typed'
        ? say('One reading is good to, {counted}', { counted })
        : say('Spread of one reading, {counted}, if proved', { counted }),
  };
}

function tryIt({ kind }: SetupForm, tilt: boolean): string {
  if (kind === 'dovetail') return 'Three readings at one place tell how well the pins seat.';
  return tilt
    ? 'Plus says that the foot at that end stands higher. Try it: put a feeler under one foot.'
    : 'Try it: push the tip in with a finger and look which way it counts.';
}

function unitOptions({ kind }: SetupForm) {
  const units = kindWords[kind].reads === 'tilt' ? tiltUnits : heightUnits;
  return units.map((unit) => [unit, unitWord(unit)] as const);
}

function Typed(fields: FieldsProps) {
  const unit: Entry = { field: 'unit', label: 'Its unit', options: unitOptions(fields.form) };
  return <Entries {...fields} entries={[{ field: 'graduation', label: 'One graduation is' }, unit]} />;
}

function Cable(fields: InstrumentFieldsProps) {
  const { form, wrong, set, plugged, onFind } = fields;
  const { reads } = kindWords[form.kind];
  const { list, look } = plugged;
  const ports = list?.ports ?? [];
  const known = ['', anotherPort, ...ports.map(nameOf)].includes(form.port);
  const alike = ports.find((port) => nameOf(port) === form.port)?.alike ?? false;
  const profiles = (list?.profiles ?? []).filter(({ units }) => units[reads] !== undefined);
  const chooseProfile = (id: string) => {
    set('profile')(id);
    const unit = profiles.find((profile) => profile.id === id)?.units[reads];
    if (unit) set('unit')(unit);
  };
  return (
    <>
      <div class="field wide with-button">
        <Choice
          label="Port"
          name="port"
          value={form.port}
          error={wrong('port')}
          options={[
            ['', ports.length > 0 ? 'choose…' : 'no port found: plug it in, then look again'],
            ...ports.map((port) => [nameOf(port), portWords(port)] as const),
            ...(known ? [] : [[form.port, `${form.port}, not there now`] as const]),
            [anotherPort, 'another path…'],
          ]}
          onChoose={set('port')}
        />
        <button type="button" class="small" onClick={look}>
          Look again
        </button>
      </div>
      {alike && form.profile !== '' && (
        <AskToMove
          text={say('Another adapter is just like this one: it is known by its socket alone.')}
          onFind={() => onFind(portsLike(form.port, ports))}
        />
      )}
      {form.port === anotherPort && (
        <Entries {...fields} entries={[{ field: 'portPath', label: 'Path of the port', wide: true }]} />
      )}
      <Choice
        label="How it talks"
        name="profile"
        wide
        value={form.profile}
        error={wrong('profile')}
        options={[
          ['', `choose how the ${instrumentWord(form.kind)} talks…`],
          ...profiles.map(({ id, title }) => [id, capital(title)] as const),
        ]}
        onChoose={chooseProfile}
      />
      <Entries
        {...fields}
        entries={[{ field: 'unit', label: 'Its numbers are', options: unitOptions(form) }]}
      />
    </>
  );
}

function portWords({ path, label }: PortList['ports'][number]): string {
  return label === path ? path : `${label} (${path})`;
}
