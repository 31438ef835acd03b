import { escapeText } from './html.ts';

/**
 * What a report says of the files that it rests on, written so that a program can read it back: one comment at the
 * end of the file, and after it the digest of everything before that.
 *
 *     <!-- wayscribe evidence {"files":[…]} -->
 *     <!-- sha256 <64 hex digits> -->
 */
export interface EvidenceFile {
  readonly file: string;
  readonly sha256: string;
  /** Link of the last line of a recording; null for a sheet. */
  readonly link: string | null;
}
export interface Evidence {
  /** Link of the last change in job.json when the report was made. */
  readonly jobLink: string;
  /** How many changes there were. */
  readonly changes: number;
  readonly files: readonly EvidenceFile[];
}

const BEGINS = '<!-- wayscribe evidence ';
const ENDS = ' -->\n';
const SEAL = /<!-- sha256 ([0-9a-f]{64}) -->\n$/;

/** The comment that carries the evidence. */
export function evidenceComment(evidence: Evidence): string {
  // Two hyphens would end the comment.
  return `${BEGINS}${JSON.stringify(evidence).replaceAll('-', '\\u002d')}${ENDS}`;
}

/** The evidence in the text of a report; null when there is none. */
export function readEvidence(html: string): Evidence | null {
  const start = html.lastIndexOf(BEGINS);
  const end = html.indexOf(ENDS, start);
  if (start < 0 || end < 0) return null;
  try {
    return JSON.parse(html.slice(start + BEGINS.length, end)) as Evidence;
  } catch {
    return null;
  }
}

/** The last line of a report, from the digest of everything before it. */
export function sealComment(sha256: string): string {
  return `<!-- sha256 ${escapeText(sha256)} -->\n`;
}

/** A report taken apart: what its seal is about, and the digest that the seal states. Null without a seal. */
export function unsealReport(html: string): { body: string; sha256: string } | null {
  const sealed = SEAL.exec(html);
  return sealed && { body: html.slice(0, sealed.index), sha256: sealed[1]! };
}
