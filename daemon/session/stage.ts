import { groupBy, merge, mergeMap, Subject, Subscription, throttleTime } from 'rxjs';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import type { Command, InstrumentState, SentError, ToPage } from '../../shared/messages.ts';
import { provedOf, withProved } from '../../shared/proving/instruments.ts';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { Listening } from '../proving/listening.ts';
import { readRecording } from '../recording/reader.ts';
import { soundPart } from '../recording/sound-part.ts';
import { dayOf } from '../recording/store.ts';
import { Survey, type SurveyTools } from './survey.ts';
import { Turns } from './turns.ts';

/** Shortest time between two needle values to the pages, ms: one frame of a screen and a half. */
const liveEveryMs = 25;
/** The same for instruments that only listen along. */
const alongEveryMs = 100;
const stateEveryMs = 100;
const benchEveryMs = 250;
/** What writes in the folder. */
const writing: ReadonlySet<Command['do']> = new Set([
  'start',
  'resume',
  'keep-instrument',
  'bind-instrument',
]);
const latest = { leading: true, trailing: true };

/**
 * What is on: a survey, or nothing. Commands of pages come in here, and everything that pages are told
 * goes out of `messages$`.
 */
export class Stage {
  readonly messages$ = new Subject<ToPage>();
  readonly #tools: SurveyTools;
  #on: Survey | null = null;
  readonly #turns = new Turns();
  #telling = new Subscription();
  /** Ports that are listened to while no survey is on. */
  readonly #listening: Listening;

  constructor(tools: SurveyTools) {
    this.#tools = tools;
    this.#listening = new Listening(tools);
    this.#listening.changed$
      .pipe(throttleTime(benchEveryMs, undefined, latest))
      .subscribe(() => this.messages$.next({ type: 'bench', bench: this.#listening.state }));
    this.#listening.live$
      .pipe(
        groupBy(({ from }) => from),
        mergeMap((needle) => needle.pipe(throttleTime(liveEveryMs, undefined, latest))),
      )
      .subscribe((live) => this.messages$.next({ type: 'bench-live', live }));
  }

  /** Everything that a page needs to begin with. */
  hello(): ToPage {
    const on = this.#on;
    return {
      type: 'hello',
      program: this.#tools.program,
      mode: this.#tools.demo ? 'demo' : 'serve',
      session: snapshotOf(on),
      instruments: statesOf(on),
      simulated: on?.bench?.state$.value ?? null,
      bench: this.#listening.state,
    };
  }

  /** Events after `seq`, for a page that missed some. */
  since(seq: number): ToPage | null {
    const shot = snapshotOf(this.#on);
    return (
      shot && { type: 'events', id: shot.header.id, events: shot.events.filter((event) => event.seq > seq) }
    );
  }

  /** Goes on with the newest survey that neither ended nor was put aside: the daemon was stopped in the middle. */
  async resumeInterrupted(): Promise<void> {
    for (const { id } of await this.#tools.store.unfinished()) {
      const path = await this.#tools.store.find(id);
      const { end } = await soundPart(path);
      const { events } = await readRecording(path, { skipReadings: true, until: end });
      if (events.at(-1)?.type === 'aside') continue;
      await this.#put(await Survey.resume(id, 'the daemon was started again', this.#tools));
      return;
    }
  }

  /**
   * Does what a page asks.
   * @throws WayscribeError when it can't be done, with the reason and what helps
   */
  async obey(command: Exclude<Command, { do: 'since' }>): Promise<void> {
    await this.#turns.take(() => this.#obey(command));
  }

  async #obey(command: Exclude<Command, { do: 'since' }>): Promise<void> {
    if (this.#tools.readOnly && writing.has(command.do)) {
      throw new WayscribeError(
        'recording.locked',
        'survey',
        'another Wayscribe writes in this folder; here recordings are only played',
        'do it on the page of that one',
      );
    }
    switch (command.do) {
      case 'start':
        this.#refuseWhileOn();
        await this.#listening.close();
        return this.#put(
          await Survey.start(await this.#takenOver(command.setup), this.#tools, command.practice),
        );
      case 'resume':
        this.#refuseWhileOn();
        await this.#listening.close();
        // A survey that has ended is still shown, and perhaps it is the one to go on with: one file, one writer.
        await this.#put(null);
        return this.#put(await Survey.resume(command.id, 'the person went on', this.#tools));
      case 'leave':
        await this.#on?.keeper.setAside();
        return this.#put(null);
      case 'bench':
        if (command.ports.length > 0) this.#refuseWhileOn();
        return this.#listening.listen(command.ports);
      case 'keep-instrument': {
        const now = Date.now();
        return this.#tools.instruments.keep(provedOf(command.proving, now, dayOf(now)));
      }
      case 'bind-instrument':
        return this.#tools.instruments.bind(command.name, command.port);
      case 'sim-lift':
        return this.#bench().lift();
      case 'sim-push':
        return this.#bench().push();
      case 'sim-set-down': {
        const { next } = this.#survey().keeper.session;
        if (next) this.#bench().setDown(next);
        return;
      }
      case 'sim-walk': {
        this.#bench();
        const { walker } = this.#survey();
        return command.on ? walker?.start() : walker?.stop();
      }
      default:
        return this.#survey().keeper.obey(command);
    }
  }

  /** The set-up with what was proved of its instrument; as it is when the memory of that can't be read. */
  async #takenOver(setup: Setup): Promise<Setup> {
    return withProved(setup, await this.#tools.instruments.proved().catch(() => []));
  }

  async close(): Promise<void> {
    await this.#listening.close();
    await this.#put(null);
    this.messages$.complete();
  }

  async #put(next: Survey | null): Promise<void> {
    this.#telling.unsubscribe();
    const before = this.#on;
    this.#on = next;
    this.#telling = next ? this.#tellOf(next) : new Subscription();
    this.messages$.next(this.hello());
    await before?.close();
  }

  #tellOf(on: Survey): Subscription {
    const telling = new Subscription();
    const tell = (message: ToPage) => this.messages$.next(message);
    on.needles.forEach(({ live$ }, k) => {
      telling.add(
        live$
          .pipe(throttleTime(k === 0 ? liveEveryMs : alongEveryMs, undefined, latest))
          .subscribe((live) => tell({ type: 'live', live })),
      );
    });
    telling.add(
      merge(...on.needles.map(({ instrument }) => instrument.state$))
        .pipe(throttleTime(stateEveryMs, undefined, latest))
        .subscribe(() => tell({ type: 'instruments', instruments: statesOf(on) })),
    );
    const id = on.header.id;
    telling.add(on.events$.subscribe((event) => tell({ type: 'events', id, events: [event] })));
    telling.add(on.keeper.refused$.subscribe((error) => tell({ type: 'refused', error: sent(error) })));
    telling.add(on.bench?.state$.subscribe((simulated) => tell({ type: 'simulated', simulated })));
    return telling;
  }

  #refuseWhileOn(): void {
    if (this.#on && !this.#on.keeper.session.ended) {
      throw new WayscribeError(
        'command.refused',
        'survey',
        'a survey is on',
        'finish it or put it aside first',
      );
    }
  }

  #survey(): Survey {
    if (this.#on) return this.#on;
    throw new WayscribeError('take.noSession', 'survey', 'no survey is on', 'set one up');
  }

  #bench() {
    const { bench } = this.#survey();
    if (bench) return bench;
    throw new WayscribeError('command.refused', 'level', 'this level is a real one', 'move it by hand');
  }
}

/** An error as it goes to a page. What is not ours is a fault of the program and is said so. */
export function sent(error: unknown): SentError {
  if (isWayscribeError(error)) {
    return { code: error.code, place: error.place, message: error.detail, remedy: error.remedy };
  }
  console.error(error);
  return {
    code: 'command.refused',
    place: 'program',
    message: 'failed unexpectedly',
    remedy: 'see what the daemon printed',
  };
}

function statesOf(on: Survey | null): InstrumentState[] {
  return on ? on.needles.map(({ instrument }) => instrument.state$.value) : [];
}

function snapshotOf(on: Survey | null): { header: Header; events: SessionEvent[]; seq: number } | null {
  return on && { header: on.header, events: [...on.kept], seq: on.seq };
}
