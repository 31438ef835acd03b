/** What was looked at, how it is, and what to do about it. */
export interface Finding {
  readonly what: string;
  /** `bad`: it will not work like this. `mind`: it works, but know this. */
  readonly is: 'good' | 'mind' | 'bad';
  readonly says: string;
  readonly remedy?: string;
}
