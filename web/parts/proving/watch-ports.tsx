import { useEffect, useState } from 'preact/hooks';
import type { InstrumentList } from '../../../shared/api.ts';
import type { BenchPort } from '../../../shared/messages.ts';
import { askInstruments } from '../../state/api.ts';
import { usePick } from '../../state/page.ts';
import { capital } from '../../words/kinds.ts';
import { unitWord } from '../../words/live.ts';
import { shortNumber } from '../../words/quantity.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { NoticeLine } from '../notice-line.tsx';
import { SentenceHead } from '../sentence-head.tsx';
import { RawBytes } from './raw-bytes.tsx';
import { whatToTry } from './unread.tsx';
import { numbered, useKeys } from './use-keys.ts';

interface WatchPortsProps {
  labelOf(port: string): string;
  onAssign(port: string, profile: string): void;
  /** Goes on with the ports that are assigned, and with the best fit of the others. */
  onGo(): void;
  onBack(): void;
}

interface Candidate {
  readonly port: string;
  readonly profile: string;
  readonly title: string;
  readonly says: string;
}

/** What comes from each port, and which profiles understand it. */
export function WatchPorts({ labelOf, onAssign, onGo, onBack }: WatchPortsProps) {
  const ports = usePick((state) => state.bench?.ports ?? none);
  const [asked, setAsked] = useState<InstrumentList['asked']>([]);
  useEffect(() => void askInstruments().then((list) => setAsked(list?.asked ?? [])), []);
  const candidates = ports.flatMap((port) => candidatesOf(port, asked));
  const ready = ports.some(({ profile, fits }) => profile !== undefined || fits.length > 0);
  const unread = ports.find((port) => port.unread);
  const go = () => ready && onGo();
  useKeys({
    ...numbered(candidates, ({ port, profile }) => onAssign(port, profile)),
    enter: go,
    b: onBack,
  });
  return (
    <>
      <header class="head one">
        <SentenceHead
          what={
            ready
              ? say('It is understood')
              : unread
                ? say('Bytes come that no profile reads')
                : say('Listening: what comes over the cable?')
          }
          context={
            unread && !ready
              ? say('Every speed and parity that a profile names is tried in turn, now {line}.', {
                  line: unread.line,
                })
              : say('Nothing is sent to a port before you have said how its instrument talks.')
          }
        >
          <NoticeLine notice={null} />
        </SentenceHead>
      </header>
      <div class="ears">
        {ports.map((port) => (
          <section key={port.port} class="ear" data-testid="ear">
            <h2>{labelOf(port.port)}</h2>
            <p class="soft">
              {[
                stateWords(port),
                port.line,
                say('{count} bytes so far', { count: shortNumber(port.bytes, 0) }),
              ].join(' · ')}
            </p>
            <div class="heard">
              <RawBytes hex={port.hex} />
              <ul class="fits">
                {candidates.map((candidate, k) =>
                  candidate.port === port.port ? (
                    <li key={candidate.profile}>
                      <Control
                        word={candidate.title}
                        hint={`${k < 9 ? `${k + 1} · ` : ''}${candidate.says}`}
                        pressed={port.profile === candidate.profile}
                        testId={`fit-${candidate.profile}`}
                        onClick={() => onAssign(port.port, candidate.profile)}
                      />
                    </li>
                  ) : null,
                )}
              </ul>
            </div>
            {port.hint && <p data-testid="hint">{port.hint}</p>}
            {port.unread && <p data-testid="unread">{whatToTry(port)}</p>}
          </section>
        ))}
      </div>
      <Row>
        <Control
          word={say('Go on')}
          hint={say('enter')}
          kind="main"
          disabled={!ready}
          testId="go-on"
          onClick={go}
        />
        <Control word={say('Other ports')} hint="B" apart onClick={onBack} />
      </Row>
    </>
  );
}

const none: readonly BenchPort[] = [];

/** The profiles that understand it; while it says nothing, those that speak only when asked. */
function candidatesOf(
  { port, profile, fits, bytes, link }: BenchPort,
  asked: InstrumentList['asked'],
): Candidate[] {
  const fit = fits.map((one) => ({ port, profile: one.profile, title: one.title, says: fitWords(one) }));
  if (bytes > 0 || link !== 'open') return fit;
  return asked.map(({ id, title }) => ({
    port,
    profile: id,
    title,
    says: id === profile ? say('asked, no answer yet') : say('speaks only when asked: choose it to ask'),
  }));
}

function fitWords({ frames, discarded, reads }: BenchPort['fits'][number]): string {
  const values = reads.map(({ channel, value, unit, state }) =>
    [channel, value ?? '', value === null || !unit ? '' : unitWord(unit), state === 'ok' ? '' : state]
      .filter((word) => word !== '')
      .join(' '),
  );
  const fit = say('{fit} of {all} frames fit', { fit: frames, all: frames + discarded });
  return `${fit} · ${values.join(', ')}`;
}

function stateWords({ link, error }: BenchPort): string {
  if (link === 'open') return say('open');
  if (!error) return say('opening');
  return `${capital(error.message)}${error.remedy ? `: ${error.remedy}` : ''}`;
}
