/** Does one thing after the other, in the order in which they were asked, whatever became of those before. */
export class Turns {
  #last: Promise<unknown> = Promise.resolve();

  take<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#last.then(work);
    this.#last = done.catch(() => {});
    return done;
  }

  /** When all that was asked so far is done. */
  async idle(): Promise<void> {
    await this.#last;
  }
}
