import { AppendFile } from './append-file.ts';
import { type OpenFile, openFile, recordingError } from './file.ts';
import { soundPart } from './sound-part.ts';
import { RecordingWriter } from './writer.ts';

export interface Reopened {
  readonly writer: RecordingWriter;
  /** Offset up to which the file is gone on with: what stands behind is no part of it any more. */
  readonly end: number;
  /** Bytes of a torn last line, hex, for the `resumed` event; empty when the file ends whole. */
  readonly torn: string;
}

/**
 * Opens a recording to go on with it. What stands after the last whole line is set aside: it is taken from
 * the file by the first append. Damage further up is left as it is, for `verify` to name. Throws `recording.notFound`, `recording.broken` or `recording.unwritable`.
 */
export async function reopenRecording(path: string, open: OpenFile = openFile): Promise<Reopened> {
  const { seq, end, link, torn } = await soundPart(path);
  const file = await open(path, 'existing').catch((error) => {
    throw recordingError(error, path);
  });
  const lines = new AppendFile(file, end, torn !== '');
  return { writer: new RecordingWriter(path, lines, seq, link), end, torn };
}
