import { hash } from 'node:crypto';

/**
 * Tamper evidence: every line of a recording ends with its own link,
 *
 *     …,"h":"<32 hex digits>"}
 *
 * the first 32 hex digits of the SHA-256 of the link of the line before it followed by the bytes of this
 * line up to `,"h":`. The first line follows the empty link. All of it is about raw bytes, so nothing that
 * a JSON parser would overlook (a space, an escape, a second key) escapes it.
 *
 * The chain has no secret: it finds damage and quiet edits, not somebody who makes the whole file anew.
 * Against that, keep the last link somewhere else, on paper for instance.
 */

const LINK_LENGTH = 32;
const BEFORE_LINK = ',"h":"';
const AFTER_LINK = '"}';
const TAIL_LENGTH = BEFORE_LINK.length + LINK_LENGTH + AFTER_LINK.length;
const TAIL = new RegExp(`^${BEFORE_LINK}([0-9a-f]{${LINK_LENGTH}})${AFTER_LINK}$`);

/** What the first line follows. */
export const NO_LINK = '';

/** A line as it is found: its bytes before the link, and the link that it states. */
export interface SealedLine {
  readonly body: Uint8Array;
  readonly link: string;
}

/** The link of a line with these bytes before its `,"h":` after a line with link `before`. */
export function linkOf(body: Uint8Array, before: string): string {
  return hash('sha256', Buffer.concat([Buffer.from(before, 'latin1'), body]), 'hex').slice(0, LINK_LENGTH);
}

/** The JSON text of an object, with its link as the last field. No line end. */
export function seal(json: string, before: string): { text: string; link: string } {
  const body = json.slice(0, -1);
  const link = hash('sha256', before + body, 'hex').slice(0, LINK_LENGTH);
  return { text: body + BEFORE_LINK + link + AFTER_LINK, link };
}

/** The bytes of a line that its link is about, whether or not there is a link. */
export function bodyOf(line: Buffer): Buffer {
  return line.subarray(0, Math.max(0, line.length - TAIL_LENGTH));
}

/** Takes a line without its line end apart; null when it does not end with a link. */
export function unseal(line: Buffer): SealedLine | null {
  const body = bodyOf(line);
  const link = TAIL.exec(line.toString('latin1', body.length))?.[1];
  return link === undefined ? null : { body, link };
}
