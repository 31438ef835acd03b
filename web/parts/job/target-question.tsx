import { useState } from 'preact/hooks';
import { jobTargetSchema } from '../../../shared/job/document.ts';
import { usePage } from '../../state/page.ts';
import { nothing } from '../../state/page-state.ts';
import { readNumber } from '../../words/numbers.ts';
import { say } from '../../words/say.ts';
import { Choice, Field } from '../field.tsx';
import type { Desk } from './desk.ts';
import { JobForm } from './job-form.tsx';

type Shape = 'flat' | 'crown' | 'hollow';

/** The wished shape, and how the person scrapes: bite, stop margin, passes before it is measured again. */
export function TargetQuestion({ desk }: { desk: Desk }) {
  const page = usePage();
  const { surface, history } = desk;
  const old = surface?.target ?? history?.newest.sheet.target;
  const [shape, setShape] = useState<Shape>(old?.shape ?? 'flat');
  const [crown, setCrown] = useState(String(old?.crownUm ?? 0));
  const [tilt, setTilt] = useState<'free' | 'fixed'>(old?.tilt ?? 'free');
  const [bite, setBite] = useState(String(old?.biteUm ?? 5));
  const [stop, setStop] = useState(String(old?.stopPasses ?? 1));
  const [perRound, setPerRound] = useState(String(surface?.target?.passesPerRound ?? 4));
  const learnt = history?.bites.findLast((each) => each !== null)?.biteUm;
  const read = jobTargetSchema.safeParse({
    shape,
    tilt,
    crownUm: readNumber(crown) ?? Number.NaN,
    biteUm: readNumber(bite) ?? Number.NaN,
    stopPasses: readNumber(stop) ?? Number.NaN,
    passesPerRound: readNumber(perRound) ?? Number.NaN,
  });
  const wrong = (field: string) =>
    read.error?.issues.some(({ path }) => path[0] === field) ? say('This does not do here.') : undefined;
  const answer = async () => {
    if (!read.success || !surface) return;
    if (!(await desk.write({ change: 'target', surface: surface.name, target: read.data })))
      page.point(nothing);
  };
  return (
    <JobForm
      title={say('What is {surface} to become?', { surface: surface?.name ?? '' })}
      answer={say('Plan by this')}
      disabled={!read.success}
      onAnswer={answer}
    >
      <div class="fields">
        <Choice
          label={say('Shape')}
          name="shape"
          value={shape}
          options={[
            ['flat', say('flat')],
            ['crown', say('crowned: high in the middle')],
            ['hollow', say('hollow: low in the middle')],
          ]}
          onChoose={(value) => setShape(value as Shape)}
        />
        {shape !== 'flat' && (
          <Field
            label={say('By, µm')}
            name="crown"
            value={crown}
            error={wrong('crownUm')}
            onInput={setCrown}
          />
        )}
        <Choice
          label={say('Tilt')}
          name="tilt"
          value={tilt}
          options={[
            ['free', say('free: as takes off the least')],
            ['fixed', say('fixed: parallel to the reference')],
          ]}
          onChoose={(value) => setTilt(value as 'free' | 'fixed')}
        />
        <Field
          label={say('Your bite: one pass takes off, µm')}
          name="bite"
          value={bite}
          error={wrong('biteUm')}
          hint={
            learnt === undefined ? undefined : say('By the last round: {bite}', { bite: learnt.toFixed(1) })
          }
          onInput={setBite}
        />
        <Field
          label={say('Last passes left to the blue')}
          name="stop"
          value={stop}
          error={wrong('stopPasses')}
          onInput={setStop}
        />
        <Field
          label={say('Passes before it is measured again')}
          name="per-round"
          value={perRound}
          error={wrong('passesPerRound')}
          onInput={setPerRound}
        />
      </div>
    </JobForm>
  );
}
