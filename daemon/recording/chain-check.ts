import { bodyOf, linkOf, NO_LINK, unseal } from './chain.ts';

/**
 * Follows the chain down a file. After a bad line it takes up the thread wherever it can (from the link
 * that the bad line states, from the one that it should have, or from the line before it), so that one
 * changed line is named once and does not put every later one in doubt.
 */
export class ChainCheck {
  #last = NO_LINK;
  #threads: readonly string[] = [NO_LINK];

  /** Link that the last sound line states. */
  get link(): string {
    return this.#last;
  }

  /** True when this line, without its line end, carries the link that it should. */
  follows(line: Buffer): boolean {
    const sealed = unseal(line);
    if (sealed && this.#threads.some((before) => linkOf(sealed.body, before) === sealed.link)) {
      this.#last = sealed.link;
      this.#threads = [sealed.link];
      return true;
    }
    const should = linkOf(bodyOf(line), this.#last);
    this.#threads = [this.#last, should, ...(sealed ? [sealed.link] : [])];
    return false;
  }
}
