/** A pass of scraping and the stations that it covers. */
export interface Pass {
  readonly pass: number;
  readonly stations: readonly string[];
}

/** Relative: a removal this little above a whole number of bites is that number of bites. */
const WHOLE_BITES = 1e-9;

/**
 * Passes that take `removeUm` off in bites of `biteUm`: removal/bite rounded up. An excess over a whole
 * number of bites of under 1e-9 of it is rounding and asks for no further pass.
 */
export function passesFor(removeUm: number, biteUm: number): number {
  const bites = removeUm / biteUm;
  return Math.max(0, Math.ceil(bites - WHOLE_BITES * Math.max(1, bites)));
}

/** Longer plans are no work for a scraper: the part goes to a machine first. */
const LONGEST_PLAN = 1000;

/**
 * The high ground first, widening, so that all of it comes down to one level together: of P passes,
 * pass p covers every station that needs more than P − p of them, which is a removal of more than
 * (P − p) bites. The last `stopPasses` are left to the blue and are not in the plan. Above 1000 passes
 * there is no plan: that is metal for a machine.
 */
export function planPasses(names: readonly string[], passes: readonly number[], stopPasses: number): Pass[] {
  const total = passes.reduce((most, n) => Math.max(most, n), 0);
  if (total > LONGEST_PLAN) return [];
  return Array.from({ length: Math.max(0, total - stopPasses) }, (_, i) => ({
    pass: i + 1,
    stations: names.filter((_name, k) => passes[k]! > total - (i + 1)),
  }));
}
