import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { addFile } from '../../daemon/job/add-file.ts';
import { JOB_FILE, JobFolder } from '../../daemon/job/job-folder.ts';
import { verifyJob } from '../../daemon/job/verify-job.ts';
import { RecordingWriter } from '../../daemon/recording/writer.ts';
import type { Header, NewEvent } from '../../shared/session/events.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { placementsOf } from '../../shared/survey/plan.ts';
import { planFor } from '../../shared/survey/plan-for.ts';
import { type Random, random } from '../tools/random.ts';
import { testFolder } from '../tools/test-folder.ts';

const TAMPERINGS = 10_000;
const seed = Number(process.env.SEED ?? 20_260_302);

const ways = [
  'change a byte',
  'remove a line',
  'swap two lines',
  'insert a line',
  'insert a byte',
  'cut off',
] as const;

/** Files of which every line holds on to the one before. */
const chained = /\.jsonl$/;

test(`${TAMPERINGS} random tamperings, none missed (seed ${seed})`, async () => {
  const folder = await smallJob();
  const files = (await readdir(folder)).filter((name) => !name.startsWith('.'));
  const texts = new Map(
    await Promise.all(files.map(async (name) => [name, await readFile(join(folder, name))] as const)),
  );
  expect((await verifyJob(folder)).problems).toEqual([]);
  const chance = random(seed);
  const missed: string[] = [];
  let [done, lineless] = [0, 0];
  while (done < TAMPERINGS) {
    const file = files[chance.below(files.length)]!;
    const way = ways[chance.below(ways.length)]!;
    const sound = texts.get(file)!;
    const spoiled = tamper(sound, way, chance);
    if (spoiled.equals(sound)) continue;
    done += 1;
    await writeFile(join(folder, file), spoiled);
    const [first] = (await verifyJob(folder)).problems;
    const due = firstDifference(sound, spoiled);
    if (!first || first.file !== file) missed.push(`${done}: ${way} in ${file}`);
    else if (first.line === undefined) {
      lineless += 1;
      // Only where no line is wrong in itself: what is no chain, and a chain that ends too soon.
      const endsSoon = sound.subarray(0, spoiled.length).equals(spoiled);
      if (chained.test(file) && !endsSoon)
        missed.push(`${done}: ${way} in ${file}, line ${due}, without its line`);
    } else if (chained.test(file) && first.line !== due) {
      missed.push(`${done}: ${way} in ${file}, line ${due}, was told of line ${first.line}`);
    }
    await writeFile(join(folder, file), sound);
  }
  console.log(
    `${done} tamperings, ${missed.length} missed; ${lineless} told by the digest of their file alone`,
  );
  expect(missed).toEqual([]);
}, 120_000);

test('a line that was left out is named although all later ones are sound', async () => {
  const folder = await smallJob();
  const path = join(folder, 'a-way.jsonl');
  const lines = (await readFile(path, 'utf8')).split('\n');
  await writeFile(path, lines.toSpliced(3, 1).join('\n'));
  expect((await verifyJob(folder)).problems).toEqual([
    {
      file: 'a-way.jsonl',
      line: 4,
      what: 'does not follow the line before: number 3 is missing, or this line was changed',
    },
  ]);
});

test('a change that was taken out of job.json is named', async () => {
  const folder = await smallJob();
  const path = join(folder, JOB_FILE);
  const lines = (await readFile(path, 'utf8')).split('\n');
  await writeFile(path, lines.toSpliced(2, 1).join('\n'));
  const [problem] = (await verifyJob(folder)).problems;
  expect(problem).toEqual({
    file: JOB_FILE,
    line: 3,
    what: 'change 2 is missing before it, or it was changed',
  });
});

/** A tiny recording, a sheet and their job.json. */
async function smallJob(): Promise<string> {
  const made = testFolder();
  const path = join(made, 'job');
  const folder = await JobFolder.create(path, { part: 'bed', owner: 'constructed' });
  const stamp = { by: 'a', at: '2026-03-02T08:00:00Z' };
  const recording = join(made, 'a-way.jsonl');
  await typedRecording(recording);
  await addFile(folder, recording, stamp);
  const sheet = join(made, 'notebook.csv');
  await writeFile(
    sheet,
    'sheet,1\nkind,way\nstation,A,0,0\nstation,B,200,0\nstation,C,400,0\nline,l,A,B,C\nwalk,w\ntilt,A,B,3\ntilt,B,C,5\n',
  );
  await addFile(folder, sheet, stamp);
  return path;
}

async function typedRecording(file: string): Promise<void> {
  const setup = setupSchema.parse({
    kind: 'way',
    part: 'bed',
    surface: 'front way',
    lengthMm: 600,
    baseMm: 200,
    stations: 4,
    back: 'no',
    instrument: { name: 'L', source: 'typed', unit: 'um/m' },
  });
  const header: Header = { recording: 1, id: 'a-way', program: 'test', t: 0, setup };
  const writer = await RecordingWriter.create(file, header);
  const events: NewEvent[] = placementsOf(planFor(setup).runs[0]!).map((place, k) => ({
    type: 'take',
    place,
    from: 'L',
    value: 3 * k,
    spread: null,
    readings: null,
    count: 1,
    by: 'typed',
    steadiness: null,
  }));
  for (const event of [...events, { type: 'end' } as const]) {
    await writer.append(event, { t: 0, m: 0 }, { durable: false });
  }
  await writer.close();
}

function tamper(bytes: Buffer, way: (typeof ways)[number], chance: Random): Buffer {
  const place = chance.below(bytes.length);
  if (way === 'cut off') return bytes.subarray(0, place);
  if (way === 'change a byte') {
    const changed = Buffer.from(bytes);
    changed[place] = chance.below(256);
    return changed;
  }
  if (way === 'insert a byte') {
    return Buffer.concat([bytes.subarray(0, place), Buffer.from([chance.below(256)]), bytes.subarray(place)]);
  }
  const lines = bytes.toString('latin1').split('\n').slice(0, -1);
  const [a, b] = [chance.below(lines.length), chance.below(lines.length)];
  const [lineA, lineB] = [lines[a]!, lines[b]!];
  const changed =
    way === 'remove a line'
      ? lines.toSpliced(a, 1)
      : way === 'insert a line'
        ? lines.toSpliced(a, 0, lineB)
        : lines.with(a, lineB).with(b, lineA);
  return Buffer.from(changed.map((line) => `${line}\n`).join(''), 'latin1');
}

/** Number of the first line that is not as it was, from 1. */
function firstDifference(sound: Buffer, spoiled: Buffer): number {
  const [was, is] = [sound, spoiled].map((bytes) => bytes.toString('latin1').split(/(?<=\n)/));
  let line = 0;
  while (was![line] === is![line]) line += 1;
  return line + 1;
}
