import { Instrument } from '../../daemon/instruments/instrument.ts';
import type { PortListener, PortMaker } from '../../daemon/ports/port.ts';
import { Keeper, type Recorder } from '../../daemon/session/keeper.ts';
import { Needle } from '../../daemon/session/needle.ts';
import type { Profile } from '../../protocols/profile.ts';
import { findProfile } from '../../protocols/shipped.ts';
import { WayscribeError } from '../../shared/errors.ts';
import { type HandsFree, untouched } from '../../shared/live/hands-free.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import { type Setup, setupSchema } from '../../shared/session/setup.ts';

export interface GatedSession {
  readonly setup: Setup;
  readonly events: SessionEvent[];
  readonly keeper: Keeper;
  readonly needle: Needle;
  /** What the keeper refused without having been asked. */
  readonly refused: WayscribeError[];
  /** One frame of the instrument 100 ms later; `settled` shows what became of it. */
  say(frame: string): void;
  /** The same frame until everything that it sets off is done, `times` over. */
  stand(frame: string, times: number): Promise<void>;
  /** Time passes and nothing is said. */
  rest(ms: number): void;
  /** Nothing reaches the file any more until `release`. */
  hold(): void;
  release(): void;
  /** Whether the disk is full. */
  full(on: boolean): void;
  pullCable(): void;
  plugCable(): Promise<void>;
  stop(): Promise<void>;
}

/** A session with an instrument on a cable, on a recorder that can be held and filled up. */
export async function gatedSession(
  over: object = {},
  {
    handsFree = untouched,
    profile = findProfile('line-decimal'),
  }: { handsFree?: HandsFree; profile?: Profile } = {},
): Promise<GatedSession> {
  const setup = setupSchema.parse({ ...demoSetups.way, ...over });
  const header: Header = { recording: 1, id: 'x', program: 'p', t: 0, setup, profile };
  const events: SessionEvent[] = [];
  const gate = new Gate();
  let isFull = false;
  let now = 0;
  const stamp = () => ({ t: now, m: now });
  const recorder: Recorder = {
    append: (event, at) =>
      gate.pass(() => {
        if (isFull) throw new WayscribeError('recording.full', 'x', 'the disk is full');
        const written = { seq: events.length + 1, ...at, ...event } as SessionEvent;
        events.push(written);
        return written;
      }),
    close: async () => {},
  };
  const keeper = new Keeper(header, [], recorder, stamp);
  let listener: PortListener | null = null;
  const port: PortMaker = {
    path: 'made up',
    open: async (_, heard) => {
      listener = heard;
      return { write: () => {}, close: async () => heard.closed(null) };
    },
  };
  const instrument = new Instrument(setup.instrument.name, profile, port);
  const needle = new Needle(instrument, setup.instrument, (event, at) => keeper.record(event, at), handsFree);
  keeper.use(needle);
  const refused: WayscribeError[] = [];
  keeper.refused$.subscribe((error) => refused.push(error));
  await instrument.start();
  const feed = (text: string) => listener!.data(Buffer.from(text, 'latin1'), stamp());
  feed('\r\n');
  const say = (frame: string) => {
    now += 100;
    feed(`${frame}\r\n`);
  };
  return {
    setup,
    events,
    keeper,
    needle,
    refused,
    say,
    stand: async (frame, times) => {
      for (let k = 0; k < times; k += 1) {
        say(frame);
        await settled();
      }
    },
    rest: (ms) => {
      now += ms;
    },
    hold: () => gate.hold(),
    release: () => gate.release(),
    full: (on) => {
      isFull = on;
    },
    pullCable: () => listener!.closed(new Error('gone')),
    plugCable: async () => {
      const before = listener;
      while (listener === before) await settled();
      feed('\r\n');
    },
    stop: () => instrument.stop(),
  };
}

/** When everything that was set off is done: none of it waits for the outside. */
export async function settled(): Promise<void> {
  for (let k = 0; k < 5; k += 1) await new Promise((resolve) => setImmediate(resolve));
}

/** Lets one through after the other, and while it is held, none. */
class Gate {
  #last: Promise<unknown> = Promise.resolve();
  #held: Promise<void> = Promise.resolve();
  #open: () => void = () => {};

  pass<T>(work: () => T): Promise<T> {
    const done = this.#last.then(() => this.#held).then(work);
    this.#last = done.catch(() => {});
    return done;
  }

  hold(): void {
    this.#held = new Promise((resolve) => {
      this.#open = resolve;
    });
  }

  release(): void {
    this.#open();
  }
}
