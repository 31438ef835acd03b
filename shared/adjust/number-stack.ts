/**
 * Numbers in blocks, last in, first out. Fronts come and go by the thousand in the order of a walk over a
 * tree; one growing array spares the allocator and the garbage collector that work.
 */
export class NumberStack {
  numbers: Float64Array;
  private top = 0;

  constructor(capacity: number) {
    this.numbers = new Float64Array(capacity);
  }

  /** Room for `size` numbers of any content on the top; answers where it starts. `numbers` may be renewed. */
  push(size: number): number {
    const start = this.top;
    this.top += size;
    if (this.top > this.numbers.length) {
      const larger = new Float64Array(Math.max(this.top, 2 * this.numbers.length));
      larger.set(this.numbers.subarray(0, start));
      this.numbers = larger;
    }
    return start;
  }

  /** Takes off everything from `start` up. */
  dropTo(start: number): void {
    this.top = start;
  }
}
