/** Reproducible random numbers for tests (Mulberry32, public domain): the same seed, the same numbers. */
export interface Random {
  /** Even in 0 … 1. */
  next(): number;
  /** A whole number in 0 … below − 1. */
  below(below: number): number;
  /** Standard normal. */
  normal(): number;
}

export function random(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    next,
    below: (below) => Math.floor(next() * below),
    normal: () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next()),
  };
}
