import { useEffect, useRef, useState } from 'preact/hooks';
import type { BenchStream } from '../../../shared/messages.ts';
import { quietOf, whichMoved } from '../../../shared/proving/moved.ts';
import { usePick } from '../../state/page.ts';
import { say } from '../../words/say.ts';
import { Control, Row } from '../control.tsx';
import { NoticeLine } from '../notice-line.tsx';
import { SentenceHead } from '../sentence-head.tsx';
import { liveOf, staleOf, streamName, streamsOf } from './bench-streams.ts';
import { NeedleWords } from './needle.tsx';
import { Unread } from './unread.tsx';
import { numbered, useKeys } from './use-keys.ts';

interface WhichMovedProps {
  /** What to do, until one was moved. */
  readonly ask?: string;
  /** Where it goes back to. */
  readonly back?: string;
  labelOf(port: string): string;
  onFound(stream: BenchStream): void;
  onBack(): void;
}

/** Which of the streams is the instrument: the one that the person moves. */
export function WhichMoved({
  ask = say('Move the one that you want to prove'),
  back = say('How it talks'),
  labelOf,
  onFound,
  onBack,
}: WhichMovedProps) {
  const bench = usePick((state) => state.bench);
  const needles = usePick((state) => state.needles);
  const state = usePick((all) => all);
  const streams = streamsOf(bench);
  const seen = useRef(new Map<string, number[]>());
  const [moved, setMoved] = useState(() => whichMoved([]));
  useEffect(() => {
    for (const { id } of streams) {
      const value = needles[id]?.value;
      if (value === undefined || value === null) continue;
      const values = seen.current.get(id) ?? [];
      seen.current.set(id, [...values.slice(-2000), value]);
    }
    setMoved(whichMoved(streams.map(({ id, quiet }) => ({ id, quiet, values: seen.current.get(id) ?? [] }))));
  }, [needles]);
  const found = moved.is === 'one' ? streams.find(({ id }) => id === moved.id) : undefined;
  const anew = () => seen.current.clear();
  /** What its profile says of its noise counts in a unit that may not be its own: then its own rest counts. */
  const choose = (stream: BenchStream) => {
    const quiet = stream.unitOpen ? quietOf(seen.current.get(stream.id) ?? [], stream.resolution) : null;
    onFound(quiet === null ? stream : { ...stream, quiet });
  };
  useKeys({
    ...numbered(streams, choose),
    enter: () => found && choose(found),
    r: anew,
    b: onBack,
  });
  const unread = (bench?.ports ?? []).filter((port) => port.unread);
  const several = moved.is === 'several';
  return (
    <>
      <header class="head one">
        <SentenceHead
          what={found ? say('It is {stream}', { stream: streamName(found, streams, labelOf) }) : ask}
          context={
            several
              ? 'More than one moved: let everything rest, watch anew, and move one alone.'
              : 'Push its tip, or lift one end of the level: the stream that moves is the one.'
          }
        >
          <NoticeLine notice={null} />
        </SentenceHead>
      </header>
      <div class="streams">
        {streams.map((stream, k) => (
          <section key={stream.id} class="stream" data-moved={stream.id === found?.id}>
            <h2>{streamName(stream, streams, labelOf)}</h2>
            <NeedleWords live={liveOf(state, stream)} unit={stream.unit} stale={staleOf(state, stream)} />
            <Control word="This one" hint={String(k + 1)} onClick={() => choose(stream)} />
          </section>
        ))}
        {unread.map((port) => (
          <Unread key={port.port} port={port} />
        ))}
        {streams.length === 0 && <p class="soft">No reading yet that a level or an indicator could give.</p>}
      </div>
      <Row>
        <Control
          word="That is it"
          hint="enter"
          kind="main"
          disabled={!found}
          testId="that-is-it"
          onClick={() => found && choose(found)}
        />
        <Control word="Watch anew" hint="R" onClick={anew} />
        <Control word={back} hint="B" apart onClick={onBack} />
      </Row>
    </>
  );
}
