/** What lies above and below the reference is called: metal stands high or low, a size is bigger or smaller. */
export interface Sides {
  readonly above: string;
  readonly below: string;
}

export const highAndLow: Sides = { above: 'high', below: 'low' };
export const biggerAndSmaller: Sides = { above: 'bigger', below: 'smaller' };
