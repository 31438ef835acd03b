import { useEffect, useState } from 'preact/hooks';
import { ActionStrip } from '../parts/action-strip.tsx';
import { Control, Row } from '../parts/control.tsx';
import type { FieldsProps } from '../parts/form-fields.ts';
import { NoticeLine } from '../parts/notice-line.tsx';
import { SentenceHead } from '../parts/sentence-head.tsx';
import { LevelFields } from '../parts/setup-level.tsx';
import { PartFields } from '../parts/setup-part.tsx';
import { WalkFields } from '../parts/setup-walk.tsx';
import { usePage, usePick } from '../state/page.ts';
import { nothing } from '../state/page-state.ts';
import { recall, remember } from '../state/preferences.ts';
import {
  demoForm,
  emptyForm,
  type FormField,
  readForm,
  type SetupForm,
  stationsFor,
} from '../state/setup-form.ts';

/** What is measured, with what and how: short, remembered, wrong only where it was touched. */
export function SetupView() {
  const page = usePage();
  const demo = usePick((state) => state.mode === 'demo');
  const [form, setForm] = useState<SetupForm>(() => (demo ? demoForm : { ...emptyForm, ...recall().form }));
  const [touched, setTouched] = useState<ReadonlySet<FormField>>(new Set());
  const [counted, setCounted] = useState(
    () => form.stations !== '' && form.stations !== stationsFor(form.length, form.base),
  );
  const { setup, errors } = readForm(form);
  useEffect(() => {
    if (!demo) remember({ form });
  }, [demo, form]);

  const set = (field: FormField) => (value: string) => {
    if (field === 'stations') setCounted(value.trim() !== '');
    setForm((old) => {
      const next = { ...old, [field]: value };
      const measured = field === 'length' || field === 'base';
      return measured && !counted ? { ...next, stations: stationsFor(next.length, next.base) } : next;
    });
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
    if (!(await page.send({ do: 'start', setup }))) page.point(nothing);
  };
  return (
    <>
      <main class="sheet">
        <SentenceHead
          what="What is measured, and with what?"
          context="Heights come out right only if length and foot spacing are."
        >
          <NoticeLine notice={null} />
        </SentenceHead>
        <form class="setup" onSubmit={submit} noValidate data-testid="setup">
          <div class="columns">
            <PartFields {...fields} />
            <LevelFields {...fields} />
          </div>
          <WalkFields {...fields} />
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
