import { useState } from 'preact/hooks';
import { ActionStrip } from '../parts/action-strip.tsx';
import { Control, Row } from '../parts/control.tsx';
import { NoticeLine } from '../parts/notice-line.tsx';
import { type ChosenPort, portsLike } from '../parts/proving/alike-ports.ts';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { AlongFields } from '../setup/along-fields.tsx';
import type { FieldsProps } from '../setup/entries.tsx';
import { emptyForm, type FormField, type SetupForm } from '../setup/fields.ts';
import { FindByMoving } from '../setup/find-by-moving.tsx';
import { InstrumentFields } from '../setup/instrument-fields.tsx';
import { KindChoice } from '../setup/kind-choice.tsx';
import { PartFields } from '../setup/part-fields.tsx';
import { type Plugged, provedOf, usePlugged } from '../setup/plugged.ts';
import { provedNow } from '../setup/proved-before.tsx';
import { firstForm, keepForm, lastForm } from '../setup/remembered.ts';
import { RunFields } from '../setup/run-fields.tsx';
import { countsStations, readForm, stationsFor } from '../setup/setup-form.ts';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';

/** What is measured, with what and how: short, remembered, wrong only where it was touched. */
export function SetupView() {
  const page = usePage();
  const demo = usePick((state) => state.mode === 'demo');
  const [form, setForm] = useState<SetupForm>(() => lastForm(demo));
  const [touched, setTouched] = useState<ReadonlySet<FormField>>(new Set());
  const [counted, setCounted] = useState(() => isCounted(form));
  const plugged = usePlugged();
  const [finding, setFinding] = useState<readonly ChosenPort[] | null>(null);
  const { setup, errors } = readForm(form, provedOf(plugged));

  const set = (field: FormField) => (value: string) => {
    if (field === 'stations') setCounted(value.trim() !== '');
    setForm((old) => {
      const next = { ...old, [field]: value };
      const measured = countsStations(next) && (field === 'length' || field === 'base');
      return measured && !counted ? { ...next, stations: stationsFor(next.length, next.base) } : next;
    });
  };
  const choose = (kind: SetupForm['kind']) => {
    const next = firstForm(kind, demo, form);
    setForm(next);
    setTouched(new Set());
    setCounted(isCounted(next));
  };
  const fields: FieldsProps = {
    form,
    set,
    wrong: (field) => (touched.has(field) ? errors[field] : undefined),
    left: (field) => () => setTouched((old) => new Set(old).add(field)),
  };
  const submit = async (event: Event) => {
    event.preventDefault();
    setTouched(new Set(Object.keys(emptyForm) as FormField[]));
    if (!setup) {
      requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
      return;
    }
    if (!demo) keepForm(form);
    const tie = tiedPorts(plugged, form);
    if (tie) return setFinding(tie);
    if (!(await page.send({ do: 'start', setup }))) page.point(nothing);
  };
  const found = async (port: string) => {
    setForm((old) => ({ ...old, port, portPath: '' }));
    const bound = provedNow(plugged, form);
    if (bound) await page.send({ do: 'bind-instrument', name: form.name, port });
    plugged.look();
    setFinding(null);
  };
  if (finding) {
    return (
      <>
        <FindByMoving
          ports={finding}
          profile={form.profile}
          name={form.name}
          onFound={(port) => void found(port)}
          onBack={() => setFinding(null)}
        />
        <ActionStrip />
      </>
    );
  }
  const instrumentFields = {
    ...fields,
    plugged,
    fill: (part: Partial<SetupForm>) => setForm((old) => ({ ...old, ...part })),
    onFind: setFinding,
  };
  return (
    <>
      <main class="sheet">
        <SentenceHead
          what="What is measured, and with what?"
          context="Heights come out right only if lengths and foot spacing are."
        >
          <NoticeLine notice={null} />
        </SentenceHead>
        <form class="setup" onSubmit={submit} noValidate data-testid="setup">
          <KindChoice kind={form.kind} onChoose={choose} />
          <div class="columns">
            <PartFields key={form.kind} {...fields} />
            <InstrumentFields {...instrumentFields} />
          </div>
          <AlongFields {...fields} plugged={plugged} />
          <RunFields {...fields} />
          <Row>
            <Control word="Start the survey" hint="enter" kind="main" submit testId="start" />
            <Control word="Back" hint="escape" apart onClick={() => page.point(nothing)} />
          </Row>
        </form>
      </main>
      <ActionStrip />
    </>
  );
}

/** Whether somebody has counted the stations, so that they do not follow from the length any more. */
function isCounted(form: SetupForm): boolean {
  return form.stations !== '' && form.stations !== stationsFor(form.length, form.base);
}

/** The ports among which the instrument must be found first: it is not in its socket, and adapters are alike. */
function tiedPorts(plugged: Plugged, form: SetupForm): readonly ChosenPort[] | null {
  const now = plugged.known?.find(({ proved }) => proved.proving.name === form.name);
  const own = now?.proved.proving.port;
  return now?.is === 'tie' && own === form.port ? portsLike(own, plugged.list?.ports ?? []) : null;
}
