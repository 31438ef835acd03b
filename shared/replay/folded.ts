import { apply, begin, type Session } from '../session/fold.ts';
import type { Recorded } from './recorded.ts';
import { lastNotBeyond } from './search.ts';

/** So many kept events lie between two sessions that are remembered. */
const apart = 48;

/**
 * The session of a recording at any moment: folded from its events up to there, so it is what the person had then. Every
 * so many events the folded session is remembered, so that a jump folds only a few.
 */
export class Folded {
  readonly #recorded: Recorded;
  /** `remembered[n]` is the session after the first n · apart kept events. */
  readonly #remembered: Session[];
  #last: { readonly folded: number; readonly session: Session };

  constructor(recorded: Recorded) {
    this.#recorded = recorded;
    let session = begin(recorded.header);
    this.#last = { folded: 0, session };
    this.#remembered = [session];
    recorded.kept.forEach((event, k) => {
      session = apply(session, event);
      if ((k + 1) % apart === 0) this.#remembered.push(session);
    });
  }

  /**
   * The session when the event at `place` had just happened; -1 for the session before its first event. Its `seq` is
   * that of the last event that is kept. Asked for the same set of events again it is the same object.
   */
  at(place: number): Session {
    const { kept, keptAt } = this.#recorded;
    const wanted = lastNotBeyond(keptAt, place) + 1;
    const near = Math.floor(wanted / apart);
    const ahead = wanted >= this.#last.folded && this.#last.folded >= near * apart;
    let { folded, session } = ahead ? this.#last : { folded: near * apart, session: this.#remembered[near]! };
    for (; folded < wanted; folded += 1) session = apply(session, kept[folded]!);
    this.#last = { folded, session };
    return session;
  }
}
