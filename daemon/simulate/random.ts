/** Random numbers that come again with the same seed. */
export interface Random {
  /** Even between 0 and 1. */
  even(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
}

/** A small 32-bit generator (mulberry32, public domain), good enough to play an instrument. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  const even = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  return { even, normal: () => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even()) };
}
