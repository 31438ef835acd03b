import { useState } from 'preact/hooks';
import type { BenchStream } from '../../../shared/messages.ts';
import type { Proving } from '../../../shared/proving/proving.ts';
import { heightUnits, tiltUnits } from '../../../shared/units.ts';
import { unitWord } from '../../words/live.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { Choice, Field } from '../field.tsx';
import { NoticeLine } from '../notice-line.tsx';
import { SentenceHead } from '../sentence-head.tsx';
import { type Declared, type DeclaredField, declaredFor, readDeclared } from './declared.ts';

interface DeclareProps {
  readonly stream: BenchStream | null;
  readonly profile: string | undefined;
  readonly by: string;
  /** What was said before, when something is to be put right; what was read stays where it still holds. */
  readonly before: Declared | null;
  onDeclared(proving: Proving, said: Declared): void;
  onBack(): void;
}

/** What is asked once of an instrument: what it is, what one count is, and by which step it is to be proved. */
export function Declare({ stream, profile, by, before, onDeclared, onBack }: DeclareProps) {
  const [form, setForm] = useState<Declared>(() => before ?? declaredFor(stream, by));
  const [tried, setTried] = useState(false);
  /** The form of which it was asked back whether it is so. */
  const [askedOf, setAskedOf] = useState<Declared | null>(null);
  const { proving, errors, doubt } = readDeclared(form, stream, profile);
  const set = (name: DeclaredField) => (value: string) => setForm((old) => ({ ...old, [name]: value }));
  const errorOf = (name: DeclaredField) => {
    if (name === 'step' && doubt !== null && askedOf === form) {
      return say('{doubt} If all is as said, begin all the same.', { doubt });
    }
    return tried ? errors[name] : undefined;
  };
  const field = (name: DeclaredField) => ({
    name,
    value: form[name],
    error: errorOf(name),
    onInput: set(name),
  });
  const choice = (name: DeclaredField) => ({
    name,
    value: form[name],
    error: errorOf(name),
    onChoose: set(name),
  });
  const tilt = form.reads === 'tilt';
  const open = stream?.unitOpen ?? true;
  const lengths = form.lengthUnit === 'in' ? say('inch') : 'mm';
  const units = (tilt ? tiltUnits : heightUnits).map((unit) => [unit, unitWord(unit)] as const);
  const submit = (event: Event) => {
    event.preventDefault();
    setTried(true);
    if (proving && (doubt === null || askedOf === form)) return onDeclared(proving, form);
    setAskedOf(form);
    requestAnimationFrame(() => document.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
  };
  return (
    <>
      <header class="head one">
        <SentenceHead
          what={tilt ? say('What level is it?') : say('What indicator is it?')}
          context={
            before
              ? say('What was read stays, unless another step or the other end of the level is named.')
              : open
                ? say(
                    'The cable does not tell what one count is. Say it once: the known step will show whether it is so.',
                  )
                : say('It says itself that it reads in {unit}. The known step will show whether it is so.', {
                    unit: unitWord(form.unit),
                  })
          }
        >
          <NoticeLine notice={null} />
        </SentenceHead>
      </header>
      <form class="setup" onSubmit={submit} noValidate data-testid="declare">
        <div class="fields">
          <Field label={say('Called')} focus {...field('name')} />
          <Field label={say('Its serial number, if it has one')} {...field('serial')} />
          <Field label={say('Proved by')} {...field('by')} />
          {!stream && (
            <Choice
              label={say('It is')}
              {...choice('reads')}
              options={[
                ['tilt', say('a level')],
                ['height', say('an indicator')],
              ]}
              onChoose={(reads) => {
                set('reads')(reads);
                set('unit')(reads === 'tilt' ? 'mm/m' : 'mm');
                set('graduation')(reads === 'tilt' ? '0.02' : '0.01');
                set('name')(reads === 'tilt' ? 'L1' : 'I1');
              }}
            />
          )}
          {open && (
            <>
              <Field
                label={stream ? say('One count is') : say('One graduation is')}
                {...field('graduation')}
              />
              <Choice label={say('of')} {...choice('unit')} options={units} />
            </>
          )}
          <Choice
            label={say('The known step is')}
            {...choice('stepIs')}
            options={[
              ['feeler', say('a feeler')],
              ['block', say('gauge blocks')],
            ]}
          />
          <Field label={say('Its size, {unit}', { unit: lengths })} {...field('step')} />
          <Choice
            label={say('Lengths in')}
            {...choice('lengthUnit')}
            options={[
              ['mm', 'mm'],
              ['in', say('inch')],
            ]}
          />
          {tilt && (
            <>
              <Field
                label={say('Between the feet of the level, {unit}', { unit: lengths })}
                {...field('base')}
              />
              <Field label={say('The far foot is the one at its')} {...field('far')} />
            </>
          )}
        </div>
        <Row>
          <Control word={say('Begin')} hint={say('enter')} kind="main" submit testId="begin" />
          <Control
            word={say('Back')}
            hint={before ? say('to the steps') : say('another one')}
            apart
            testId="declare-back"
            onClick={onBack}
          />
        </Row>
      </form>
    </>
  );
}
