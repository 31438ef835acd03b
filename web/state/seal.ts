/**
 * Lines of JSON objects as a recording, each tied to the one before by its link: the first 32 hex digits of the SHA-256
 * of the link before and of this line up to `,"h":`.
 */
export async function sealed(lines: readonly string[]): Promise<string> {
  let before = '';
  const written: string[] = [];
  for (const line of lines) {
    const body = line.slice(0, -1);
    before = (await sha256(before + body)).slice(0, 32);
    written.push(`${body},"h":"${before}"}\n`);
  }
  return written.join('');
}

async function sha256(text: string): Promise<string> {
  const digest = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
