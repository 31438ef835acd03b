import type { Stats } from 'node:fs';
import { access, mkdir, readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { RecordingList } from '../../shared/api.ts';
import { isWayscribeError, WayscribeError } from '../../shared/errors.ts';
import { headerSchema } from '../../shared/session/events.ts';
import { apply, begin, type Session } from '../../shared/session/fold.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { recordingError } from './file.ts';
import { streamRecording } from './reader.ts';
import { soundPart } from './sound-part.ts';

const EXTENSION = '.jsonl';
const MAX_SLUG = 28;

export type Listed = RecordingList[number];

/** A file in the folder that cannot be read as a recording, and why. */
export interface Unreadable {
  readonly file: string;
  readonly reason: string;
}

/** A folder of recordings, one file `<id>.jsonl` each. */
export class RecordingStore {
  readonly folder: string;
  readonly #seen = new Map<string, { stamp: string; entry: Promise<Listed | Unreadable> }>();

  constructor(folder: string) {
    this.folder = folder;
  }

  /** Opens a folder, which is made when it is not there. Throws `recording.unwritable`. */
  static async open(folder: string): Promise<RecordingStore> {
    try {
      await mkdir(folder, { recursive: true });
    } catch (error) {
      throw recordingError(error, folder);
    }
    return new RecordingStore(folder);
  }

  /** Where the recording with this id is, or would be. Throws `recording.notFound` for what is no id. */
  pathOf(id: string): string {
    if (!headerSchema.shape.id.safeParse(id).success) throw notFound(id);
    return join(this.folder, `${id}${EXTENSION}`);
  }

  /** Where the recording with this id is. Throws `recording.notFound`. */
  async find(id: string): Promise<string> {
    const path = this.pathOf(id);
    if (!(await exists(path))) throw notFound(id);
    return path;
  }

  /** An id that is free: day, part and surface, and a number when there is one already. */
  async newId(setup: Pick<Setup, 'part' | 'surface'>, t: number): Promise<string> {
    const stem = [dayOf(t), slug(setup.part), slug(setup.surface)].filter(Boolean).join('-');
    for (let k = 1; ; k += 1) {
      const id = k === 1 ? stem : `${stem}-${k}`;
      if (!(await exists(this.pathOf(id)))) return id;
    }
  }

  /** Every recording, newest first, and beside them the files that cannot be read. */
  async list(): Promise<{ recordings: RecordingList; unreadable: Unreadable[] }> {
    const files = (await readdir(this.folder)).filter((file) => file.endsWith(EXTENSION)).sort();
    const recordings: Listed[] = [];
    const unreadable: Unreadable[] = [];
    const looked = await Promise.all(files.map((file) => stat(join(this.folder, file)).catch(() => null)));
    for (const [k, file] of files.entries()) {
      const found = looked[k];
      const entry = found ? await this.#look(file, found) : null;
      if (entry && 'id' in entry) recordings.push(entry);
      else if (entry) unreadable.push(entry);
    }
    recordings.sort((a, b) => b.t - a.t);
    return { recordings, unreadable };
  }

  /** Recordings without an end, newest first: what could be gone on with. */
  async unfinished(): Promise<RecordingList> {
    return (await this.list()).recordings.filter((entry) => !entry.ended);
  }

  /** One file as a line of the list, from memory when it has not changed. Whoever asks meanwhile waits for the same. */
  #look(file: string, { size, mtimeMs }: Stats): Promise<Listed | Unreadable> {
    const stamp = `${size} ${mtimeMs}`;
    const seen = this.#seen.get(file);
    if (seen?.stamp === stamp) return seen.entry;
    const entry = summarise(join(this.folder, file), file);
    this.#seen.set(file, { stamp, entry });
    entry.catch(() => this.#seen.delete(file));
    return entry;
  }
}

async function summarise(path: string, file: string): Promise<Listed | Unreadable> {
  try {
    // The chain is followed only where reading fails: what a power cut left at the end is passed over.
    const session = await sessionOf(path).catch(async (error) => {
      if (!isWayscribeError(error, 'recording.broken')) throw error;
      const sound = await soundPart(path).catch(() => null);
      if (!sound?.torn) throw error;
      return sessionOf(path, sound.end);
    });
    const { header } = session;
    if (file !== `${header.id}${EXTENSION}`) return { file, reason: `holds the recording ${header.id}` };
    return listed(session);
  } catch (error) {
    if (!isWayscribeError(error)) throw error;
    return { file, reason: error.message };
  }
}

async function sessionOf(path: string, until?: number): Promise<Session> {
  const { header, groups } = await streamRecording(path, {
    skipReadings: true,
    ...(until !== undefined && { until }),
  });
  let session = begin(header);
  for await (const events of groups) session = events.reduce(apply, session);
  return session;
}

function listed(session: Session): Listed {
  const { header, setup } = session;
  return {
    id: header.id,
    t: header.t,
    part: setup.part,
    surface: setup.surface,
    round: setup.round,
    operator: setup.operator,
    takes: session.counted.size,
    planned: session.placements.length,
    ended: session.ended,
    simulated: header.simulated !== undefined,
  };
}

/** The day in local time, as people name their files: 2025-03-09. */
export function dayOf(t: number): string {
  const date = new Date(t);
  const two = (n: number) => String(n).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}

/** Lower-case letters and digits of a name, joined by hyphens; empty when there are none. */
export function slug(name: string): string {
  return name
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, MAX_SLUG)
    .replace(/^-+|-+$/g, '');
}

async function exists(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

function notFound(id: string): WayscribeError {
  return new WayscribeError(
    'recording.notFound',
    JSON.stringify(id.slice(0, 80)),
    'there is no such recording',
  );
}
