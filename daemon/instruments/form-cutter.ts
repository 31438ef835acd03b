import { type CutState, cut, cutEnd, type Piece, uncut } from '../../protocols/cut.ts';
import type { Profile } from '../../protocols/profile.ts';
import type { Stamp } from '../../shared/session/events.ts';
import { stampNow } from '../ports/port.ts';
import type { CutListener, Cutter } from './cutter.ts';

/** Cuts the bytes of one opening of a port into frames that end by their length, or with a pause. */
export class FormCutter implements Cutter {
  readonly #profile: Profile;
  readonly #listener: CutListener;
  #state: CutState;
  #pause: NodeJS.Timeout | null = null;

  constructor(profile: Profile, listener: CutListener) {
    this.#profile = profile;
    this.#listener = listener;
    this.#state = uncut(profile);
  }

  push(bytes: Buffer, stamp: Stamp): void {
    this.#cut(bytes.toString('latin1'), stamp);
    const { frame } = this.#profile;
    if (frame.ends !== 'silence') return;
    if (this.#pause) clearTimeout(this.#pause);
    // A reading is as old as its last byte, not as the pause that showed it whole.
    this.#pause = setTimeout(
      () => this.#cut('', { ...stamp, m: stampNow().m }, stamp),
      frame.gapMs + 1,
    ).unref();
  }

  end(stamp: Stamp): void {
    if (this.#pause) clearTimeout(this.#pause);
    this.#tell(cutEnd(this.#state), stamp);
    this.#state = uncut(this.#profile);
  }

  #cut(bytes: string, now: Stamp, came = now): void {
    const { state, pieces } = cut(this.#profile, this.#state, bytes, now.m);
    this.#state = state;
    this.#tell(pieces, came);
  }

  #tell(pieces: readonly Piece[], stamp: Stamp): void {
    for (const piece of pieces) {
      if (piece.frame !== undefined) this.#listener.frame(piece.frame, stamp);
      else this.#listener.discarded(piece.noise, piece.why, stamp);
    }
  }
}
