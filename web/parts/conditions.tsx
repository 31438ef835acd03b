import { useState } from 'preact/hooks';
import { thermalBowUm } from '../../shared/notice/temperature.ts';
import { type SaidConditions, saidOf } from '../../shared/session/conditions.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { close } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { readNumber } from '../words/numbers.ts';
import { say } from '../words/say.ts';
import { Control, Row } from './control.tsx';
import { Field } from './field.tsx';

const degrees = ['partC', 'airC', 'topC', 'bottomC'] as const;
const words = ['support', 'bolts', 'carriage', 'mounted', 'standing', 'gloves', 'operator'] as const;
type Name = (typeof degrees)[number] | (typeof words)[number];

const labels: Readonly<Record<Name, string>> = {
  partC: 'Iron, °C',
  airC: 'Air, °C',
  topC: 'Top of the iron, °C',
  bottomC: 'Bottom of the iron, °C',
  support: 'Support',
  bolts: 'Bolts and clamps',
  carriage: 'Carriage or table stands',
  mounted: 'Mounted on it',
  standing: 'You stand',
  gloves: 'Gloves',
  operator: 'By',
};

/** What may change while a survey is on: temperatures, support, what stands where, and who holds the level. */
export function Conditions() {
  const page = usePage();
  const setup = usePick((state) => state.session?.setup);
  const [form, setForm] = useState(() => formOf(setup ? saidOf(setup) : {}));
  const wrong = Object.fromEntries(degrees.map((name) => [name, wrongTemperature(form[name])]));
  const set = (name: Name) => (value: string) => setForm((old) => ({ ...old, [name]: value }));
  const send = async (event: Event) => {
    event.preventDefault();
    if (degrees.some((name) => wrong[name])) return;
    const told = degrees.flatMap((name) => {
      const value = readNumber(form[name]);
      return value === null ? [] : [[name, value]];
    });
    const before = formOf(setup ? saidOf(setup) : {});
    const said = words.flatMap((name) => (form[name] === before[name] ? [] : [[name, form[name]]]));
    if (!(await page.send({ do: 'conditions', ...Object.fromEntries([...told, ...said]) })))
      page.point(nothing);
  };
  return (
    <form class="question" onSubmit={send} noValidate data-testid="conditions">
      <h2>{say('Conditions from now on')}</h2>
      <div class="fields four">
        {[...degrees, ...words].map((name) => (
          <Field
            key={name}
            name={name}
            label={say(labels[name])}
            value={form[name]}
            error={wrong[name]}
            hint={name === 'bottomC' && setup ? bowHint(setup, form.topC, form.bottomC) : undefined}
            onInput={set(name)}
            focus={name === 'partC'}
          />
        ))}
      </div>
      <Row>
        <Control word={say('Put on record')} hint={say('enter')} kind="main" submit />
        <Control word={say('No change')} hint={say('escape')} onClick={() => close(page)} />
      </Row>
    </form>
  );
}

function formOf(said: SaidConditions): Record<Name, string> {
  const text = (name: Name) => (said[name] === undefined ? '' : String(said[name]));
  return Object.fromEntries([...degrees, ...words].map((name) => [name, text(name)])) as Record<Name, string>;
}

/** The bow that a top warmer than its bottom would make: told, never taken off. */
function bowHint(setup: Setup, top: string, bottom: string): string | undefined {
  const [topC, bottomC] = [readNumber(top), readNumber(bottom)];
  if (topC === null || bottomC === null || topC === bottomC) return undefined;
  const lengthMm = 'travelMm' in setup ? setup.travelMm : setup.lengthMm;
  const bowUm = thermalBowUm({ lengthMm, depthMm: setup.depthMm ?? lengthMm / 10 }, topC - bottomC);
  const size = Math.abs(bowUm).toPrecision(2);
  return bowUm > 0
    ? say('would bow the iron {size} µm proud; nothing is taken off', { size })
    : say('would bow the iron {size} µm hollow; nothing is taken off', { size });
}

function wrongTemperature(text: string): string | undefined {
  if (text.trim() === '') return undefined;
  const value = readNumber(text);
  return value !== null && value >= -50 && value <= 100
    ? undefined
    : say('a temperature between −50 and 100');
}
