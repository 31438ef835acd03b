/**
 * The lines of a recording without anybody's name, not yet sealed: a copy to share, never a change to the recording.
 * Who measured is taken out of the set-up and of the conditions; what somebody wrote into a note stays, and a torn last
 * line is left out.
 * @param text of a sound recording
 */
export function withoutNames(text: string): string[] {
  const lines = text.split('\n').slice(0, -1);
  return lines.map((line, k) => {
    const { h: _, ...document } = JSON.parse(line);
    if (k === 0) return JSON.stringify({ ...document, setup: { ...document.setup, operator: '' } });
    if (document.type !== 'conditions') return JSON.stringify(document);
    const { operator: _name, ...rest } = document;
    return JSON.stringify(rest);
  });
}
