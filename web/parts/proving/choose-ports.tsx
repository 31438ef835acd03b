import { useCallback, useEffect, useState } from 'preact/hooks';
import type { InstrumentList, PortList } from '../../../shared/api.ts';
import { provedSentence } from '../../../shared/proving/instruments.ts';
import { askInstruments, askPorts } from '../../state/api.ts';
import { Control, Row } from '../control.tsx';
import { Field } from '../field.tsx';
import { NoticeLine } from '../notice-line.tsx';
import { SentenceHead } from '../sentence-head.tsx';
import { numbered, useKeys } from './use-keys.ts';

/** A port by its identity, and what a person calls it. */
export interface ChosenPort {
  readonly port: string;
  readonly label: string;
}

interface ChoosePortsProps {
  onListen(ports: readonly ChosenPort[]): void;
  onTyped(): void;
  onLeave(): void;
}

/** Which cables are listened to, or none: an instrument that is read by eye. */
export function ChoosePorts({ onListen, onTyped, onLeave }: ChoosePortsProps) {
  const [list, setList] = useState<PortList | null>(null);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [other, setOther] = useState('');
  const look = useCallback(() => void askPorts().then(setList), []);
  useEffect(look, [look]);
  // The simulated instrument of the demo hangs on no port.
  const ports = (list?.ports ?? []).filter(({ path }) => path.includes('/') || /^COM\d/.test(path));
  const nameOf = ({ identity, path }: (typeof ports)[number]) => identity ?? path;
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
          what="Plug it in, switch it on, and choose its port"
          context="Choose more than one when you are not sure: moving the instrument shows which it is."
        >
          <NoticeLine notice={null} />
        </SentenceHead>
      </header>
      <fieldset class="ports" aria-label="Ports">
        {ports.map((port, k) => (
          <Control
            key={nameOf(port)}
            word={port.label}
            hint={`${k + 1} · ${port.path}${port.alike ? ' · one like it is plugged in: known by its socket' : ''}`}
            pressed={chosen.includes(nameOf(port))}
            testId="port"
            onClick={() => toggle(nameOf(port))}
          />
        ))}
        {list && ports.length === 0 && <p class="soft">No port is plugged in that this computer knows.</p>}
      </fieldset>
      <form
        class="other-port"
        onSubmit={(event) => {
          event.preventDefault();
          listen();
        }}
      >
        <Field label="Another port, by its path" name="other-port" value={other} onInput={setOther} />
      </form>
      <Known />
      <Row>
        <Control
          word="Listen"
          hint="enter"
          kind="main"
          disabled={wanted.length === 0}
          testId="listen"
          onClick={listen}
        />
        <Control word="Look again" hint="L" onClick={look} />
        <Control word="I read it by eye" hint="E, no cable" testId="by-eye" onClick={onTyped} />
        <Control word="Back" hint="escape" apart onClick={onLeave} />
      </Row>
    </>
  );
}

const whereWords: Readonly<Record<InstrumentList['instruments'][number]['is'], string>> = {
  typed: 'read by eye',
  found: 'plugged in',
  tie: 'not in its socket, and one like it is plugged in: listen to both and move this one',
  absent: 'not plugged in',
};

/** What was proved before. */
function Known() {
  const [list, setList] = useState<InstrumentList | null | 'asking'>('asking');
  useEffect(() => void askInstruments().then(setList), []);
  if (list === null)
    return <p class="known wrong">What was proved before can’t be read: see instruments.json.</p>;
  if (list === 'asking' || list.instruments.length === 0) return <div class="known" />;
  return (
    <section class="known">
      <h2>Proved before</h2>
      <table class="recordings">
        <tbody>
          {list.instruments.map(({ proved, is }) => (
            <tr key={proved.proving.name} data-testid="proved-before">
              <td>{`${provedSentence(proved)}.`}</td>
              <td class="minor">{`${proved.day}${proved.proving.by ? ` by ${proved.proving.by}` : ''}`}</td>
              <td class="minor">{whereWords[is]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
