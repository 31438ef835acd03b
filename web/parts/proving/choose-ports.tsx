import { useCallback, useEffect, useState } from 'preact/hooks';
import type { PortList } from '../../../shared/api.ts';
import type { Proving } from '../../../shared/proving/proving.ts';
import { askPorts } from '../../state/api.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { Field } from '../field.tsx';
import { NoticeLine } from '../notice-line.tsx';
import { SentenceHead } from '../sentence-head.tsx';
import { type ChosenPort, nameOf, portsLike } from './alike-ports.ts';
import { KnownInstruments } from './known-instruments.tsx';
import { numbered, useKeys } from './use-keys.ts';

interface ChoosePortsProps {
  onListen(ports: readonly ChosenPort[]): void;
  onTyped(): void;
  /** One that was proved before is used as it is. */
  onUse(proving: Proving): void;
  /** One that was proved before hangs on one of these ports, and it isn't known on which. */
  onMove(proving: Proving, ports: readonly ChosenPort[]): void;
  onLeave(): void;
}

/** Which cables are listened to, or none: an instrument that is read by eye. */
export function ChoosePorts({ onListen, onTyped, onUse, onMove, onLeave }: ChoosePortsProps) {
  const [list, setList] = useState<PortList | null>(null);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [other, setOther] = useState('');
  const look = useCallback(() => void askPorts().then(setList), []);
  useEffect(look, [look]);
  // The simulated instrument of the demo hangs on no port.
  const ports = (list?.ports ?? []).filter(({ path }) => path.includes('/') || /^COM\d/.test(path));
  const toggle = (name: string) =>
    setChosen((old) => (old.includes(name) ? old.filter((one) => one !== name) : [...old, name]));
  const wanted = other.trim() === '' ? chosen : [...chosen, other.trim()];
  const listen = () => {
    if (wanted.length === 0) return;
    onListen(
      wanted.map((port) => ({ port, label: ports.find((one) => nameOf(one) === port)?.label ?? port })),
    );
  };
  useKeys({
    ...numbered(ports, (port) => toggle(nameOf(port))),
    enter: listen,
    l: look,
    e: onTyped,
  });
  return (
    <>
      <header class="head one">
        <SentenceHead
          what={say('Plug it in, switch it on, and choose its port')}
          context={say(
            'Choose more than one when you are not sure: moving the instrument shows which it is.',
          )}
        >
          <NoticeLine notice={null} />
        </SentenceHead>
      </header>
      <fieldset class="ports" aria-label={say('Ports')}>
        {ports.map((port, k) => (
          <Control
            key={nameOf(port)}
            word={port.label}
            hint={[
              k + 1,
              port.path,
              ...(port.alike ? [say('one like it is plugged in: known by its socket')] : []),
            ].join(' · ')}
            pressed={chosen.includes(nameOf(port))}
            testId="port"
            onClick={() => toggle(nameOf(port))}
          />
        ))}
        {list && ports.length === 0 && (
          <p class="soft">{say('No port is plugged in that this computer knows.')}</p>
        )}
      </fieldset>
      <form
        class="other-port"
        onSubmit={(event) => {
          event.preventDefault();
          listen();
        }}
      >
        <Field label={say('Another port, by its path')} name="other-port" value={other} onInput={setOther} />
      </form>
      <KnownInstruments onUse={onUse} onMove={(known) => onMove(known, portsLike(known.port, ports))} />
      <Row>
        <Control
          word={say('Listen')}
          hint={say('enter')}
          kind="main"
          disabled={wanted.length === 0}
          testId="listen"
          onClick={listen}
        />
        <Control word={say('Look again')} hint="L" onClick={look} />
        <Control word={say('I read it by eye')} hint={say('E, no cable')} testId="by-eye" onClick={onTyped} />
        <Control word={say('Back')} hint={say('escape')} apart onClick={onLeave} />
      </Row>
    </>
  );
}
