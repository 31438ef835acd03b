import { ReadlineParser } from '@serialport/parser-readline';
import type { Profile } from '../../protocols/profile.ts';
import type { Stamp } from '../../shared/session/events.ts';

export interface CutListener {
  /** A frame between two delimiters, one character a byte. */
  frame(text: string, stamp: Stamp): void;
  /** Bytes that can be no frame. */
  discarded(text: string, why: string, stamp: Stamp): void;
}

/**
 * Cuts the bytes of one opening of a port into frames.
 *
 * A cutter lives as long as its opening, so that two halves from before and after a break never join.
 * What comes before the first delimiter may be the tail of a frame and is discarded, and so is what is
 * left at the end, although the line parser would give it out as a line.
 */
export class FrameCutter {
  readonly #frame: Profile['frame'];
  readonly #listener: CutListener;
  #parser: ReadlineParser;
  #held = 0;
  #stamp: Stamp;
  /** Why the next frame is none, if so. */
  #distrust: string | null = 'before the first delimiter';

  constructor(frame: Profile['frame'], stamp: Stamp, listener: CutListener) {
    this.#frame = frame;
    this.#stamp = stamp;
    this.#listener = listener;
    this.#parser = this.#newParser();
  }

  push(bytes: Buffer, stamp: Stamp): void {
    this.#stamp = stamp;
    this.#held += bytes.length;
    this.#parser.write(bytes);
    // The line parser would hold an endless line for ever: wrong speed or wrong delimiter.
    if (this.#held > 2 * this.#frame.longest) {
      this.#drop(`no delimiter in ${this.#held} bytes: is the speed right?`);
      this.#parser = this.#newParser();
      this.#distrust = 'the rest of a frame that was too long';
    }
  }

  end(stamp: Stamp): void {
    this.#stamp = stamp;
    this.#drop('cut off by the end of the line');
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
      if (why === null) this.#listener.frame(text, this.#stamp);
      else this.#listener.discarded(text, why, this.#stamp);
    });
    return parser;
  }
}
