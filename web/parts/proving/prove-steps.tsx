import { useState } from 'preact/hooks';
import type { BenchStream } from '../../../shared/messages.ts';
import { progressOf } from '../../../shared/proving/progress.ts';
import {
  again,
  type Proving,
  type ProvingStep,
  posesIn,
  stepsOf,
  withTake,
} from '../../../shared/proving/proving.ts';
import { signOf } from '../../../shared/proving/sign.ts';
import type { Verdict } from '../../../shared/proving/verdict.ts';
import { usePick } from '../../state/page.ts';
import { capital } from '../../words/kinds.ts';
import { unitWord } from '../../words/live.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { Triangle } from '../notice-line.tsx';
import { SentenceHead } from '../sentence-head.tsx';
import { liveOf, staleOf } from './bench-streams.ts';
import { instructionFor, stepName } from './instructions.ts';
import { NeedleTrace, NeedleWords } from './needle.tsx';
import { PoseDrawing } from './pose-drawing.tsx';
import { TypedPose } from './typed-pose.tsx';
import { Unread } from './unread.tsx';
import { useKeys } from './use-keys.ts';
import { type Taken, useTaking } from './use-taking.ts';

interface ProveStepsProps {
  readonly proving: Proving;
  readonly stream: BenchStream | null;
  onChange(proving: Proving): void;
  onBack(): void;
}

/** The steps of a proving one by one, in large words, with the needle beside them. */
export function ProveSteps({ proving, stream, onChange, onBack }: ProveStepsProps) {
  const live = usePick((state) => liveOf(state, stream));
  const stale = usePick((state) => stream && staleOf(state, stream));
  const unread = usePick(({ bench }) =>
    bench?.ports.find((port) => port.port === stream?.port && port.unread),
  );
  const [refusal, setRefusal] = useState<string | null>(null);
  const { verdicts, step, pose } = progressOf(proving);
  const failed = pose === null ? (verdicts.at(-1) ?? null) : null;
  const put = (taken: Taken) => {
    setRefusal(null);
    if (pose) onChange(withTake(proving, { pose, ...taken }));
  };
  const taking = useTaking(stream, live, pose, put);
  const take = (insist: boolean) => () => pose && setRefusal(taking.take(insist));
  const redo = step && anyTaken(proving, step) ? step : lastDone(proving, step);
  const doAgain = () => {
    setRefusal(null);
    if (redo) onChange(again(proving, redo));
  };
  const fits = failed?.fits;
  const useUnit = () => fits && onChange({ ...proving, unit: fits });
  useKeys({
    ' ': take(false),
    enter: failed ? doAgain : take(false),
    pagedown: take(false),
    a: take(true),
    r: doAgain,
    u: useUnit,
    h: taking.switchHandsFree,
    b: onBack,
  });
  if (!step) return null;
  const { what, context } = failed ? failure(failed) : instructionFor(proving, pose!);
  const sign = signOf(proving);
  return (
    <>
      <header class={`head ${stream ? '' : 'one'}`}>
        <SentenceHead what={what} context={context}>
          {live?.bounced && (
            <p class="notice" role="status" data-testid="bounced">
              {say('Its button sent the same reading twice within half a second: it was taken once.')}
            </p>
          )}
          {refusal && (
            <p class="notice warns" role="alert" data-testid="not-taken">
              <Triangle />
              <span>{`${capital(refusal)}.`}</span>
            </p>
          )}
        </SentenceHead>
        {stream && (
          <>
            <NeedleTrace live={live} />
            <NeedleWords
              live={live}
              unit={proving.unit}
              stale={stale}
              sides={sign && sidesOf(proving, sign)}
            />
          </>
        )}
      </header>
      <div class="proof">
        <Steps proving={proving} now={step} verdicts={verdicts} />
        {unread ? <Unread port={unread} /> : pose && <PoseDrawing proving={proving} pose={pose} />}
      </div>
      <Row>
        {failed ? (
          <Control
            word={say('Do it again')}
            hint={say('enter')}
            kind="main"
            testId="again"
            onClick={doAgain}
          />
        ) : stream ? (
          <>
            <Control
              word={stream.byButton ? say('Press its button') : say('Take')}
              hint={takeHint(stream, taking.handsFree)}
              kind="main"
              testId="take"
              disabled={stream.byButton}
              onClick={take(false)}
            />
            {!stream.byButton && (
              <Control
                word={say('Take anyway')}
                hint={say('A, not settled')}
                testId="insist"
                onClick={take(true)}
              />
            )}
          </>
        ) : (
          <TypedPose pose={pose!} onTyped={(value) => put({ value, spread: null })} />
        )}
        {fits && (
          <Control
            word={say('It reads in {unit}', { unit: unitWord(fits) })}
            hint={say('U, the same readings are judged anew')}
            testId="use-unit"
            onClick={useUnit}
          />
        )}
        {redo && !failed && <Control word={say('Step again')} hint="R" testId="redo" onClick={doAgain} />}
        {stream && !stream.byButton && !failed && (
          <Control
            word={taking.handsFree ? say('Hands-free is on') : say('Hands-free is off')}
            hint={taking.handsFree ? say('H, takes when still') : say('H, switch on')}
            pressed={taking.handsFree}
            testId="hands-free"
            onClick={taking.switchHandsFree}
          />
        )}
        <Control word={say('What it is')} hint="B" apart onClick={onBack} />
      </Row>
    </>
  );
}

/** Every step: what it has shown, what is on, what is to come. */
function Steps({
  proving,
  now,
  verdicts,
}: {
  proving: Proving;
  now: ProvingStep;
  verdicts: readonly Verdict[];
}) {
  return (
    <ol class="steps" data-testid="steps" data-taken={proving.takes.length}>
      {stepsOf(proving).map((step) => {
        const verdict = verdicts.find((one) => one.step === step);
        const taken = posesIn(step).filter((pose) => proving.takes.some((take) => take.pose === pose)).length;
        return (
          <li key={step} data-step={step} data-is={verdict?.is ?? (step === now ? 'now' : 'open')}>
            <h2>{stepName(step)}</h2>
            {verdict && verdict.is !== 'good' ? (
              <p class="notice warns" role="alert" data-testid="not-proved" data-slip={verdict.slip?.id}>
                <Triangle />
                <span>{verdict.sentence}</span>
              </p>
            ) : (
              <p>
                {verdict?.sentence ??
                  (step === now
                    ? say('{taken} of {all} readings taken.', { taken, all: posesIn(step).length })
                    : '')}
              </p>
            )}
          </li>
        );
      })}
    </ol>
  );
}

function sidesOf({ reads }: Proving, sign: 1 | -1): [string, string] {
  const [high, low] =
    reads === 'tilt' ? [say('far foot HIGH'), say('far foot LOW')] : [say('HIGH'), say('LOW')];
  return sign > 0 ? [high, low] : [low, high];
}

function failure({ slip, sentence, remedy }: Verdict): { what: string; context: string } {
  const what = slip ? capital(say('it reads {slip}', { slip: slip.words })) : say('Not proved yet');
  return { what, context: remedy ?? sentence };
}

function takeHint({ byButton }: BenchStream, handsFree: boolean): string {
  if (byButton) return say('on the instrument: that takes');
  return handsFree ? say('space · pedal · or hold still') : say('space · pedal');
}

function anyTaken(proving: Proving, step: ProvingStep): boolean {
  return posesIn(step).some((pose) => proving.takes.some((take) => take.pose === pose));
}

/** The step before the one that is on. */
function lastDone(proving: Proving, step: ProvingStep | null): ProvingStep | null {
  const steps = stepsOf(proving);
  return steps[(step ? steps.indexOf(step) : steps.length) - 1] ?? null;
}
