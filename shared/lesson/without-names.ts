/**
 * The lines of a recording without anybody's name, not yet sealed: a copy to share, never a change to the recording.
 * Who measured, and who proved the instruments, is taken out of the set-up and of the conditions; what somebody wrote into a note stays, and a torn last
 * line is left out.
 * @param text of a sound recording
 */
export function withoutNames(text: string): string[] {
  const lines = text.split('\n').slice(0, -1);
  return lines.map((line, k) => {
    const { h: _, ...document } = JSON.parse(line);
    if (k === 0) return JSON.stringify({ ...document, setup: namelessSetup(document.setup) });
    if (document.type !== 'conditions') return JSON.stringify(document);
    const { operator: _name, ...rest } = document;
    return JSON.stringify(rest);
  });
}

interface Named {
  readonly operator: string;
  readonly instrument: { readonly provedOn?: string | undefined };
  readonly others?: readonly { readonly provedOn?: string | undefined }[] | undefined;
}

/** A set-up without the names of who measured and who proved its instruments; the days stay. */
export function namelessSetup<T extends Named>(setup: T): T {
  const nameless = <I extends { readonly provedOn?: string | undefined }>(instrument: I): I =>
    instrument.provedOn === undefined
      ? instrument
      : { ...instrument, provedOn: instrument.provedOn.replace(/ by .*$/s, '') };
  const { others } = setup;
  return {
    ...setup,
    operator: '',
    instrument: nameless(setup.instrument),
    ...(others && { others: others.map(nameless) }),
  };
}
