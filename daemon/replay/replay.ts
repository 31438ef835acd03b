import { filter, type Observable } from 'rxjs';
import { type Header, isKept, type SessionEvent } from '../../shared/session/events.ts';
import type { Needle } from '../session/needle.ts';
import { Player } from './player.ts';
import { ReplayedLevel } from './replayed-level.ts';

/** A recording that is played: its events as they were, its instruments speaking again. It takes no takes. */
export class Replay {
  readonly header: Header;
  readonly player: Player;
  readonly events$: Observable<SessionEvent>;
  readonly #levels: readonly ReplayedLevel[];

  private constructor(player: Player, levels: readonly ReplayedLevel[]) {
    this.header = player.header;
    this.player = player;
    this.#levels = levels;
    this.events$ = player.played$.pipe(filter(isKept));
    player.played$.subscribe((event) => {
      if (event.type !== 'reading') return;
      levels.find(({ instrument }) => instrument.name === event.from)?.say(event);
    });
  }

  static async of(header: Header, events: readonly SessionEvent[]): Promise<Replay> {
    return new Replay(new Player(header, events), await ReplayedLevel.allOf(header));
  }

  get needles(): readonly Needle[] {
    return this.#levels.map(({ needle }) => needle);
  }

  get kept(): readonly SessionEvent[] {
    return this.player.shown;
  }

  get seq(): number {
    return this.player.state$.value.atSeq;
  }

  async close(): Promise<void> {
    this.player.stop();
    await Promise.all(this.#levels.map((level) => level.stop()));
  }
}
