/** Something about a profile that contradicts itself (`error`), or that its owner should know (`note`). */
export interface Finding {
  readonly kind: 'error' | 'note';
  /** Path in the profile, as frame.delimiter. */
  readonly place: string;
  readonly message: string;
}

export function error(place: string, message: string): Finding {
  return { kind: 'error', place, message };
}

export function note(place: string, message: string): Finding {
  return { kind: 'note', place, message };
}
