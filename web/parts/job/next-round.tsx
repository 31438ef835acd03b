import { useState } from 'preact/hooks';
import { nextSetup, roundName } from '../../../shared/job/template.ts';
import { unlike } from '../../../shared/job/unlike.ts';
import { capital } from '../../../shared/report/words.ts';
import type { Session } from '../../../shared/session/fold.ts';
import { type SetupInput, setupSchema } from '../../../shared/session/setup.ts';
import { usePage } from '../../state/page.ts';
import { nothing } from '../../state/page-state.ts';
import { dayText } from '../../words/job.ts';
import { readNumber } from '../../words/numbers.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { Choice, Field } from '../field.tsx';
import type { Desk } from './desk.ts';
import { JobForm } from './job-form.tsx';

/** The next survey is done as the first was; what is not alike is said before it begins. */
export function NextRound({ desk }: { desk: Desk }) {
  const page = usePage();
  const session = desk.history?.first.session ?? null;
  if (session) return <LikeTheFirst desk={desk} session={session} />;
  return (
    <section class="question job-form">
      <h2>
        {desk.history
          ? say('The first survey came as a sheet: bring the next one in under Papers, or measure it here.')
          : say('The first survey, as found, is the template of all later ones. Set it up with care.')}
      </h2>
      <Row>
        <Control
          word={say('Set up a survey')}
          hint={say('keep it in this job when it is finished')}
          kind="main"
          onClick={() => page.point({ at: 'setup' })}
        />
        <Control word={say('Leave it')} hint={say('escape')} onClick={() => page.point(nothing)} />
      </Row>
    </section>
  );
}

function LikeTheFirst({ desk, session }: { desk: Desk; session: Session }) {
  const page = usePage();
  const { first, surveys } = desk.history!;
  const next = roundName(surveys.length);
  const inWork = `in work ${surveys.filter(({ record }) => /^in work/.test(record.round)).length + 1}`;
  const [round, setRound] = useState(inWork === next ? next : inWork);
  const [support, setSupport] = useState(session.setup.support);
  const [part, setPart] = useState('');
  const [air, setAir] = useState('');
  const [partC, airC] = [readNumber(part), readNumber(air)];
  const wrong = (text: string, value: number | null) =>
    text.trim() !== '' && (value === null || Math.abs(value) > 50)
      ? say('This is no temperature.')
      : undefined;
  const input: SetupInput = {
    ...nextSetup(session.setup, round),
    operator: desk.by,
    support,
    ...(partC !== null && { partC }),
    ...(airC !== null && { airC }),
  };
  const read = setupSchema.safeParse(input);
  const rows = read.success
    ? unlike(first, { sheet: first.sheet, session: { ...session, setup: read.data } })
    : [];
  const start = async () => {
    if (!read.success) return;
    if (!(await page.send({ do: 'start', setup: input }))) page.point(nothing);
  };
  return (
    <JobForm
      title={say('Next round of {surface}, measured as on {day}', {
        surface: session.setup.surface,
        day: dayText(first.record.at),
      })}
      answer={say('Start the survey')}
      disabled={!read.success}
      onAnswer={start}
    >
      <p>{templateText(session)}</p>
      <div class="fields">
        <Choice
          label={say('Round')}
          name="round"
          value={round}
          options={[
            [inWork, inWork],
            ['as left', say('as left')],
          ]}
          onChoose={setRound}
        />
        <Field label={say('Support')} name="support" value={support} onInput={setSupport} />
        <div class="fields two">
          <Field
            label={say('Iron, °C')}
            name="partC"
            value={part}
            error={wrong(part, partC)}
            onInput={setPart}
          />
          <Field label={say('Air, °C')} name="airC" value={air} error={wrong(air, airC)} onInput={setAir} />
        </div>
      </div>
      <div data-testid="next-unlike">
        <h2>{say('Not alike so far')}</h2>
        {rows.length === 0 ? (
          <p>{say('Nothing: it will be comparable as it is.')}</p>
        ) : (
          <dl class="unlike across">
            {rows.map(({ what, before, after }) => (
              <div key={what}>
                <dt>{capital(what)}</dt>
                <dd>{say('{before}, then {after}', { before, after })}</dd>
              </div>
            ))}
          </dl>
        )}
      </div>
    </JobForm>
  );
}

function templateText({ setup, plan }: Session): string {
  const values = {
    count: plan.stations.length,
    instrument: setup.instrument.name,
    base: 'baseMm' in setup && setup.baseMm !== undefined ? setup.baseMm : 0,
  };
  return values.base > 0
    ? say(
        'Kept as it was: {count} stations, {base} mm foot to foot, {instrument}, the same walks and facing.',
        values,
      )
    : say('Kept as it was: {count} stations, {instrument}, the same sweeps.', values);
}
