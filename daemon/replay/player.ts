import { BehaviorSubject, Subject } from 'rxjs';
import type { PlayerState } from '../../shared/messages.ts';
import { timesOf } from '../../shared/replay/times.ts';
import { type Header, isKept, type SessionEvent } from '../../shared/session/events.ts';

/**
 * Plays a recording on its own clock: in the time in which it was made, faster, or step by step. It gives
 * out events as they stand in the file; what they mean is folded by whoever listens.
 */
export class Player {
  readonly played$ = new Subject<SessionEvent>();
  /** Everything starts again from the header. */
  readonly rewound$ = new Subject<void>();
  readonly state$: BehaviorSubject<PlayerState>;
  readonly header: Header;
  readonly #events: readonly SessionEvent[];
  /** Time into the recording of each event, ms, with long waits shortened. */
  readonly #at: Float64Array;
  #next = 0;
  #timer: NodeJS.Timeout | null = null;

  constructor(header: Header, events: readonly SessionEvent[], speed = 1) {
    this.header = header;
    this.#events = events;
    this.#at = timesOf(events);
    this.state$ = new BehaviorSubject<PlayerState>({
      recording: header.id,
      playing: false,
      speed,
      atSeq: 0,
      lastSeq: events.at(-1)?.seq ?? 0,
      atMs: 0,
      lengthMs: this.#at.at(-1) ?? 0,
    });
  }

  /** Kept events that were given out so far. */
  get shown(): SessionEvent[] {
    return this.#events.slice(0, this.#next).filter(isKept);
  }

  play(): void {
    if (this.#timer) return;
    if (this.#next >= this.#events.length) this.rewind();
    this.#schedule();
  }

  pause(): void {
    if (this.#timer) clearTimeout(this.#timer);
    this.#timer = null;
    this.#tell();
  }

  speed(speed: number): void {
    const playing = this.#timer !== null;
    this.pause();
    this.state$.next({ ...this.state$.value, speed });
    if (playing) this.#schedule();
  }

  /** On to the next thing that a person did, and stop there. */
  step(): void {
    this.pause();
    while (this.#next < this.#events.length) {
      const event = this.#give();
      if (isKept(event) && event.type !== 'gap') break;
    }
    this.#tell();
  }

  toEnd(): void {
    this.pause();
    while (this.#next < this.#events.length) this.#give();
    this.#tell();
  }

  rewind(): void {
    this.pause();
    this.#next = 0;
    this.rewound$.next();
    this.#tell();
  }

  stop(): void {
    this.pause();
    this.played$.complete();
    this.rewound$.complete();
    this.state$.complete();
  }

  #give(): SessionEvent {
    const event = this.#events[this.#next]!;
    this.#next += 1;
    this.played$.next(event);
    return event;
  }

  #schedule(): void {
    const from = this.#next > 0 ? this.#at[this.#next - 1]! : 0;
    const started = performance.now();
    const tick = () => {
      const until = from + (performance.now() - started) * this.state$.value.speed;
      while (this.#next < this.#events.length && this.#at[this.#next]! <= until) this.#give();
      if (this.#next >= this.#events.length) return this.pause();
      const waitMs = (this.#at[this.#next]! - until) / this.state$.value.speed;
      this.#timer = setTimeout(tick, Math.max(5, waitMs));
      this.#tell();
    };
    this.#timer = setTimeout(tick, 0);
    this.#tell();
  }

  #tell(): void {
    const last = this.#next - 1;
    this.state$.next({
      ...this.state$.value,
      playing: this.#timer !== null,
      atSeq: last < 0 ? 0 : this.#events[last]!.seq,
      atMs: last < 0 ? 0 : this.#at[last]!,
    });
  }
}
