import { useState } from 'preact/hooks';
import { close } from '../state/actions.ts';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { readNumber } from '../words/numbers.ts';
import { Control, Row } from './control.tsx';
import { Field } from './field.tsx';

/** What may change while a survey is on: temperatures, support, and who holds the level. */
export function Conditions() {
  const page = usePage();
  const setup = usePick((state) => state.session?.setup);
  const [form, setForm] = useState({
    partC: setup?.partC === undefined ? '' : String(setup.partC),
    airC: setup?.airC === undefined ? '' : String(setup.airC),
    support: setup?.support ?? '',
    operator: setup?.operator ?? '',
  });
  const wrong = { partC: wrongTemperature(form.partC), airC: wrongTemperature(form.airC) };
  const set = (key: keyof typeof form) => (value: string) => setForm((old) => ({ ...old, [key]: value }));
  const send = async (event: Event) => {
    event.preventDefault();
    if (wrong.partC || wrong.airC) return;
    const refusal = await page.send({
      do: 'conditions',
      ...(form.partC.trim() && { partC: readNumber(form.partC) ?? 0 }),
      ...(form.airC.trim() && { airC: readNumber(form.airC) ?? 0 }),
      support: form.support,
      operator: form.operator,
    });
    if (!refusal) page.point(nothing);
  };
  return (
    <form class="question" onSubmit={send} noValidate>
      <h2>Conditions from now on</h2>
      <div class="fields four">
        <Field label="Iron, °C" value={form.partC} error={wrong.partC} onInput={set('partC')} focus />
        <Field label="Air, °C" value={form.airC} error={wrong.airC} onInput={set('airC')} />
        <Field label="Support" value={form.support} onInput={set('support')} />
        <Field label="By" value={form.operator} onInput={set('operator')} />
      </div>
      <Row>
        <Control word="Put on record" hint="enter" kind="main" submit />
        <Control word="No change" hint="escape" onClick={() => close(page)} />
      </Row>
    </form>
  );
}

function wrongTemperature(text: string): string | undefined {
  if (text.trim() === '') return undefined;
  const value = readNumber(text);
  return value !== null && value >= -50 && value <= 100 ? undefined : 'a temperature between −50 and 100';
}
