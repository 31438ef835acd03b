const reasons: Readonly<Record<string, string>> = {
  EACCES: 'it may not be read by you',
  EISDIR: 'this is a folder',
  ENAMETOOLONG: 'its name is too long for a file',
  ENOENT: 'there is no such file',
  ENOTDIR: 'there is no such file',
};

/** Why the system did not read a file, in words that stand behind its name. */
export function whyUnreadable(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? String(error);
  return reasons[code] ?? `it cannot be read (${code})`;
}
