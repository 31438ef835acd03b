import { notices } from '../../../shared/notice/notices.ts';
import type { Header, SessionEvent, TakeEvent } from '../../../shared/session/events.ts';
import { fold, type Session } from '../../../shared/session/fold.ts';
import { resultOf } from '../../../shared/session/result.ts';
import type { Result } from '../../../shared/sheet/result.ts';
import { trueLine } from './true-line.ts';

/** What a recording comes to, for whoever writes its lesson: every number that a lesson states is taken from here. */
export class Facts {
  readonly header: Header;
  readonly events: readonly SessionEvent[];
  readonly session: Session;
  readonly result: Result;

  constructor(header: Header, events: readonly SessionEvent[]) {
    this.header = header;
    this.events = events;
    this.session = fold(header, events);
    this.result = resultOf(this.session);
  }

  get lastSeq(): number {
    return this.events.at(-1)!.seq;
  }

  /** The nth take of the recording, counted from 1, whatever became of it. */
  take(nth: number): TakeEvent {
    return this.session.takes[nth - 1]!.event;
  }

  /** Number of the nth take. */
  at(nth: number): number {
    return this.take(nth).seq;
  }

  /** A moment before the nth take at which the needle has not come to rest. */
  unsettled(nth: number): number {
    return this.take(nth).readings![0] - 2;
  }

  /** The session and the result right after event `seq`. */
  upTo(seq: number): Facts {
    return new Facts(
      this.header,
      this.events.filter((event) => event.seq <= seq),
    );
  }

  line(name?: string): Result['lines'][string] {
    return this.result.lines[name ?? Object.keys(this.result.lines)[0]!]!;
  }

  /** Straightness against a reference, µm, as it is said. */
  straight(reference: 'ends' | 'leastSquares' | 'minimumZone' = 'ends', line?: string): string {
    return this.line(line).straightness[reference].valueUm.toFixed(1);
  }

  /** Straightness of the true metal by its ends, µm, as it is said. */
  trueStraight(line?: string): string {
    const heights = trueLine(this.header, this.result, line ?? Object.keys(this.result.lines)[0]!).map(
      ({ trueUm }) => trueUm,
    );
    return (Math.max(...heights) - Math.min(...heights)).toFixed(1);
  }

  get told(): readonly string[] {
    return notices(this.session, this.result).map(({ text }) => text);
  }

  get codes(): readonly string[] {
    return notices(this.session, this.result).map(({ code }) => code);
  }
}
