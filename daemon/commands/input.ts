import { isUtf8 } from 'node:buffer';
import { type FileHandle, open } from 'node:fs/promises';
import { WayscribeError } from '../../shared/errors.ts';
import { apply, begin } from '../../shared/session/fold.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { maxSheetBytes, parseSheet, type Sheet, validateSheet } from '../../shared/sheet/sheet.ts';
import { streamRecording } from '../recording/reader.ts';
import { whyUnreadable } from '../unreadable.ts';

const RECORDING = /^\s*\{\s*"recording"\s*:/;
/** How the readings begin that a person saved as a table. */
const TABLE = /^\uFEFF?seq,time,run,stations,/;
const LONGEST_BEGINNING = 256;

/**
 * The sheet in a file: a sheet in JSON or CSV, or what a recording boils down to. Throws what is wrong
 * with it; errors that name no place inside the file name the file.
 */
export async function readSheet(path: string): Promise<Sheet> {
  const file = await open(path).catch((error) => {
    throw unreadable(path, error);
  });
  try {
    return (await beginsAsRecording(file)) ? await sheetOfRecording(path) : await sheetOfFile(path, file);
  } catch (error) {
    if (error instanceof WayscribeError) throw placed(path, error);
    throw unreadable(path, error);
  } finally {
    await file.close();
  }
}

/** Whether a file begins as a recording does, sound or not. */
export async function isRecording(path: string): Promise<boolean> {
  const file = await open(path);
  try {
    return await beginsAsRecording(file);
  } finally {
    await file.close();
  }
}

async function beginsAsRecording(file: FileHandle): Promise<boolean> {
  const { buffer, bytesRead } = await file.read({ buffer: Buffer.alloc(LONGEST_BEGINNING), position: 0 });
  return RECORDING.test(buffer.toString('latin1', 0, bytesRead));
}

async function sheetOfRecording(path: string): Promise<Sheet> {
  const { header, groups } = await streamRecording(path, { skipReadings: true });
  let session = begin(header);
  for await (const events of groups) session = events.reduce(apply, session);
  if (session.counted.size === 0) {
    throw new WayscribeError('recording.invalid', path, 'no take counts in this recording');
  }
  return validateSheet(toSheet(session));
}

async function sheetOfFile(path: string, file: FileHandle): Promise<Sheet> {
  const { size } = await file.stat();
  if (size > maxSheetBytes) {
    throw new WayscribeError('sheet.tooLarge', path, 'the sheet is over 64 MiB', 'split the survey');
  }
  const bytes = await file.readFile();
  if (!isUtf8(bytes)) {
    throw new WayscribeError('sheet.notASheet', path, 'this is not UTF-8 text', 'save the sheet as UTF-8');
  }
  const text = bytes.toString();
  if (TABLE.test(text)) {
    throw new WayscribeError(
      'sheet.notASheet',
      path,
      'this is the table of the readings of a survey',
      'name its recording, or its sheet',
    );
  }
  return parseSheet(text);
}

function placed(path: string, error: WayscribeError): WayscribeError {
  return error.place ? error : new WayscribeError(error.code, path, error.detail, error.remedy);
}

function unreadable(path: string, error: unknown): WayscribeError {
  return new WayscribeError('sheet.notASheet', path, whyUnreadable(error), 'name a sheet or a recording');
}
