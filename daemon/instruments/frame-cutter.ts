import { ReadlineParser } from '@serialport/parser-readline';
import { brokenOffMs } from '../../protocols/cut.ts';
import type { Stamp } from '../../shared/session/events.ts';
import type { CutListener, Cutter } from './cutter.ts';

/**
 * Cuts the bytes of one opening of a port into frames that end with a delimiter.
 *
 * A cutter lives as long as its opening, so that two halves from before and after a break never join.
 * What comes before the first delimiter may be the tail of a frame and is discarded, and so is what is
 * left at the end, although the line parser would give it out as a line.
 */
export class FrameCutter implements Cutter {
  readonly #frame: { readonly delimiter: string; readonly longest: number };
  readonly #listener: CutListener;
  #parser: ReadlineParser;
  #held = 0;
  readonly #gapMs: number;
  #stamp: Stamp;
  /** Why the next frame is none, if so. */
  #distrust: string | null;

  /**
   * @param proved whether each frame proves itself whole by a checksum, so that the first needs no delimiter before it
   * @param gapMs a longer gap within a frame says that it broke off
   */
  constructor(
    frame: { readonly delimiter: string; readonly longest: number },
    stamp: Stamp,
    listener: CutListener,
    proved = false,
    gapMs = brokenOffMs,
  ) {
    this.#gapMs = gapMs;
    this.#frame = frame;
    this.#stamp = stamp;
    this.#listener = listener;
    this.#distrust = proved ? null : 'before the first delimiter';
    this.#parser = this.#newParser();
  }

  push(bytes: Buffer, stamp: Stamp): void {
    if (this.#held > 0 && stamp.m - this.#stamp.m > this.#gapMs) {
      this.#renew('broke off', 'the rest of a frame that broke off');
    }
    this.#stamp = stamp;
    this.#held += bytes.length;
    this.#parser.write(bytes);
    // The line parser would hold an endless line for ever: wrong speed or wrong delimiter.
    if (this.#held > 2 * this.#frame.longest) {
      const why = `no delimiter in ${this.#held} bytes: is the speed right?`;
      this.#renew(why, 'the rest of a frame that was too long');
    }
  }

  end(stamp: Stamp): void {
    this.#stamp = stamp;
    this.#drop('cut off by the end of the line');
  }

  /** Drops what is held, and begins anew. */
  #renew(why: string, distrust: string | null): void {
    this.#drop(why);
    this.#parser = this.#newParser();
    this.#distrust = distrust;
  }

  #drop(why: string): void {
    this.#distrust = why;
    this.#parser.end();
    this.#held = 0;
  }

  #newParser(): ReadlineParser {
    const { delimiter } = this.#frame;
    // With its delimiter a frame is never empty: the parser passes over empty ones, and they would not be counted.
    const parser = new ReadlineParser({ delimiter, encoding: 'latin1', includeDelimiter: true });
    parser.on('data', (line: string) => {
      this.#held = Math.max(0, this.#held - line.length);
      const text = line.endsWith(delimiter) ? line.slice(0, -delimiter.length) : line;
      const why = this.#distrust;
      this.#distrust = null;
      if (text === '') return;
      if (why === null) this.#listener.frame(text, this.#stamp);
      else this.#listener.discarded(text, why, this.#stamp);
    });
    return parser;
  }
}
