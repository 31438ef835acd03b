import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { readSheet } from '../../daemon/commands/input.ts';
import { loadProfiles } from '../../daemon/instruments/own-profiles.ts';
import { JobFolder } from '../../daemon/job/job-folder.ts';
import { unzipJob } from '../../daemon/job/unzip-job.ts';
import { verifyJob } from '../../daemon/job/verify-job.ts';
import { zip } from '../../daemon/job/zip.ts';
import { InstrumentStore } from '../../daemon/proving/instrument-store.ts';
import { bodyOf, linkOf, NO_LINK } from '../../daemon/recording/chain.ts';
import { readRecording } from '../../daemon/recording/reader.ts';
import { reopenRecording } from '../../daemon/recording/reopen.ts';
import { RecordingStore } from '../../daemon/recording/store.ts';
import { verifyRecording } from '../../daemon/recording/verify.ts';
import { proveLesson, readLesson } from '../../shared/lesson/lesson.ts';
import { reduce } from '../../shared/reduce.ts';
import { headerSchema } from '../../shared/session/events.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { toCsv } from '../../shared/session/to-csv.ts';
import { writeSample } from '../tools/sample-recording.ts';

/** A kind of file that is read from outside. */
export interface DocumentKind {
  readonly name: string;
  /** Sound files of this kind; made in a folder of their own. */
  sound(folder: string): Promise<readonly string[]>;
  /** Ties a damaged file together again as its writer would, so that what lies behind the seal is tried too. */
  sealAnew?(latin1: string): string;
  /** Where the file lies in the folder. */
  readonly file: string;
  /**
   * Does with the file all that the program does with one. Refuses it with a WayscribeError.
   * @returns what else the program says is wrong with it, each naming its place
   */
  read(path: string, folder: string): Promise<readonly string[]>;
}

const recordings = join(import.meta.dirname, '..', '..', 'recordings');
const text = (path: string) => readFileSync(path, 'latin1');

/** Every kind of file that the program reads. A new kind is one more entry. */
export const documentKinds: readonly DocumentKind[] = [
  {
    name: 'recordings',
    file: 'sample.jsonl',
    sealAnew: (latin1) => chained(latin1.split('\n')).lines.join('\n'),
    async sound(folder) {
      const path = join(folder, 'made.jsonl');
      await writeSample(path);
      return [text(path), withoutMostReadings(text(join(recordings, 'front-way-with-mishaps.jsonl')))];
    },
    async read(path, folder) {
      const { problems } = await verifyRecording(path);
      const { unreadable } = await new RecordingStore(folder).list();
      const { header, events } = await readRecording(path);
      const session = fold(header, events);
      toCsv(session);
      resultOf(session);
      const { writer } = await reopenRecording(path);
      await writer.close();
      return [
        ...problems.map(({ line, what }) => `line ${line}: ${what}`),
        ...unreadable.map(({ file, reason }) => `${file}: ${reason}`),
      ];
    },
  },
  {
    name: 'sheets',
    file: 'sheet.json',
    sound: async () => [
      text(join(recordings, 'rebuild', 'tailstock-way-as-found.json')),
      JSON.stringify(await readSheet(join(recordings, 'front-way-as-found.jsonl'))),
      'station,reading\nF0,0\nF1,12\nF2,-3.5\nF3,4\n',
    ],
    async read(path) {
      const result = reduce(await readSheet(path));
      if (JSON.stringify(result).includes('null')) checkNumbers(result, 'result');
      return [];
    },
  },
  {
    name: 'profiles',
    file: 'profiles/mine.json',
    sound: async () =>
      ['line-decimal', 'sum-frame'].map((id) =>
        // Under a name of its own: one that is taken would be refused whatever it says.
        text(join(recordings, '..', 'protocols', 'profiles', `${id}.json`)).replaceAll(id, 'mine'),
      ),
    async read(path) {
      const { problems } = await loadProfiles(join(path, '..'));
      return problems.map(({ place, message }) => (place ? message : ''));
    },
  },
  {
    name: 'jobs',
    file: 'job.json',
    sealAnew: jobSealedAnew,
    sound: async () => [text(join(recordings, 'rebuild', 'job.json'))],
    async read(path, folder) {
      const { problems } = await verifyJob(folder);
      await JobFolder.open(join(path, '..'));
      return problems.map(({ file, line, what }) => `${file} line ${line ?? ''}: ${what}`);
    },
  },
  {
    name: 'archives',
    file: 'bed.zip',
    sound: async () => {
      const names = ['job.json', 'tailstock-way-as-found.json'];
      const modified = new Date(2026, 2, 2);
      const bytesOf = (name: string) => readFileSync(join(recordings, 'rebuild', name));
      return [
        zip(names.map((name) => ({ name: `bed/${name}`, bytes: bytesOf(name), modified }))).toString(
          'latin1',
        ),
      ];
    },
    async read(path, folder) {
      const into = mkdtempSync(join(folder, 'opened-'));
      try {
        await unzipJob(path, into);
        // Nothing lies beside the one folder of the job, neither in it nor above it.
        const astray = [...readdirSync(into).slice(1), ...readdirSync(folder).slice(2)];
        if (astray.length > 0) throw new Error(`${astray} lies where nothing belongs`);
        return [];
      } finally {
        rmSync(into, { recursive: true });
      }
    },
  },
  {
    name: 'lessons',
    file: 'mine.lesson.json',
    sound: async () => [text(join(recordings, 'lessons', 'chip.lesson.json'))],
    async read(path) {
      const { header, events } = chip();
      proveLesson(readLesson(text(path)), header, events);
      return [];
    },
  },
  {
    name: 'instruments',
    file: 'instruments.json',
    sound: async () => [
      JSON.stringify({ instruments: 1, proved: [] }),
      JSON.stringify({ instruments: 1, proved: [{ t: 0, day: '2025-01-01', proving: { name: 'level' } }] }),
    ],
    async read(_path, folder) {
      await new InstrumentStore(folder).proved();
      return [];
    },
  },
];

/** What the lesson of a chip is laid beside; read once. */
const chip = once(() => {
  const lines = text(join(recordings, 'lessons', 'chip.jsonl'))
    .trim()
    .split('\n');
  return { header: headerSchema.parse(JSON.parse(lines[0]!)), events: lines.length - 1 };
});

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** A folder for one kind with a file in it, which is written anew for each try. */
export function folderFor(kind: DocumentKind): string {
  const inMemory = '/dev/shm';
  return mkdtempSync(join(existsSync(inMemory) ? inMemory : tmpdir(), `wayscribe-fuzz-${kind.name}-`));
}

export function put(folder: string, { file }: DocumentKind, latin1: string): string {
  const path = join(folder, file);
  writeFileSync(path, latin1, 'latin1');
  return path;
}

/** A recording short enough to be read a hundred thousand times: its takes no longer find their readings. */
function withoutMostReadings(lines: string): string {
  return lines
    .split('\n')
    .filter((line, k) => !line.includes('"type":"reading"') || k % 40 === 0)
    .join('\n');
}

/** A result holds null only where its schema says so, and never in the place of a number that came to nothing. */
function checkNumbers(found: unknown, place: string): void {
  if (typeof found === 'number' && !Number.isFinite(found)) throw new Error(`${place} is ${found}`);
  if (typeof found !== 'object' || found === null) return;
  for (const [name, inner] of Object.entries(found)) checkNumbers(inner, `${place}.${name}`);
}

/** Lines that end with a link, each linked anew to the one before; others as they are. */
function chained(lines: readonly string[], first = NO_LINK): { lines: string[]; link: string } {
  let link = first;
  const linked = lines.map((line) => {
    const comma = line.endsWith(',') ? ',' : '';
    const bytes = Buffer.from(comma ? line.slice(0, -1) : line, 'latin1');
    const body = bodyOf(bytes);
    if (!bytes.toString('latin1', body.length).startsWith(',"h":"')) return line;
    link = linkOf(body, link);
    return `${body.toString('latin1')},"h":"${link}"}${comma}`;
  });
  return { lines: linked, link };
}

function jobSealedAnew(latin1: string): string {
  const [head = '', ...rest] = latin1.split('\n');
  const { lines, link } = chained(rest, linkOf(Buffer.from(head, 'latin1'), NO_LINK));
  const changes = lines.filter((line) => line.startsWith('{'));
  return [head, ...changes, `],"count":${changes.length},"link":"${link}"}`, ''].join('\n');
}
