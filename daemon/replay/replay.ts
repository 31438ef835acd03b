import { filter, type Observable } from 'rxjs';
import { type Header, isKept, type SessionEvent } from '../../shared/session/events.ts';
import type { Instrument } from '../instruments/instrument.ts';
import type { Needle } from '../session/needle.ts';
import { Player } from './player.ts';
import { ReplayedLevel } from './replayed-level.ts';

/** A recording that is played: its events as they were, its level speaking again. It takes no takes. */
export class Replay {
  readonly header: Header;
  readonly player: Player;
  readonly events$: Observable<SessionEvent>;
  readonly #level: ReplayedLevel | null;

  private constructor(player: Player, level: ReplayedLevel | null) {
    this.header = player.header;
    this.player = player;
    this.#level = level;
    this.events$ = player.played$.pipe(filter(isKept));
    player.played$.subscribe((event) => {
      if (event.type === 'reading') level?.say(event);
    });
  }

  static async of(header: Header, events: readonly SessionEvent[]): Promise<Replay> {
    return new Replay(new Player(header, events), await ReplayedLevel.of(header));
  }

  get instrument(): Instrument | null {
    return this.#level?.instrument ?? null;
  }

  get needle(): Needle | null {
    return this.#level?.needle ?? null;
  }

  get kept(): readonly SessionEvent[] {
    return this.player.shown;
  }

  get seq(): number {
    return this.player.state$.value.atSeq;
  }

  async close(): Promise<void> {
    this.player.stop();
    await this.#level?.stop();
  }
}
