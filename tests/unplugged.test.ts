import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { seededRandom } from '../daemon/simulate/random.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { LevelPlayer } from './tools/level-player.ts';
import { usedS } from './tools/many-instruments.ts';
import { PageClient } from './tools/page-client.ts';
import { PtyPair } from './tools/pty-pair.ts';

/** How often the cable is pulled out and put back: a few in the tests, 200 by `npm run soak`. */
const cycles = Number(process.env.CYCLES ?? 12);
const seed = Number(process.env.SEED ?? 41);
const random = seededRandom(seed);

let folder = '';
let cable: PtyPair | undefined;
let level: LevelPlayer | undefined;
let daemon: DaemonProcess | undefined;
let page: PageClient | undefined;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  cable = new PtyPair(folder);
  await cable.plugIn();
  level = new LevelPlayer(cable.a, seed);
  daemon = await DaemonProcess.start('serve', '--folder', join(folder, 'recordings'));
  page = await PageClient.open(daemon.url);
});
afterAll(async () => {
  page?.close();
  await daemon?.stop();
  await level?.stop();
  await cable?.pullOut();
  await rm(folder, { recursive: true, force: true });
});

test(`the cable is pulled out and put back ${cycles} times at random moments of a walk`, async () => {
  console.log(`seed ${seed}`);
  const setup = setupSchema.parse({
    kind: 'way',
    part: 'Test bench 2',
    surface: 'way',
    lengthMm: 99_900,
    baseMm: 100,
    stations: 1000,
    back: 'no',
    instrument: { name: 'level', source: 'cable', port: cable!.b, profile: 'line-decimal', unit: 'um/m' },
  });
  expect(await page!.ask({ do: 'start', setup })).toBeNull();
  const link = () => page!.last('instruments')?.instruments[0]?.link;
  let pulling = true;

  /** The hand: lifts the level and sets it down again, whatever the cable does. */
  const walk = async () => {
    while (pulling) {
      level!.order({ do: 'lift' });
      await wait(200);
      level!.order({ do: 'stand', rest: 40 * random.normal() });
      await wait(2200);
    }
  };
  const backAfterMs: number[] = [];
  let idle = 0;
  const pull = async () => {
    for (let k = 0; k < cycles; k += 1) {
      await wait(200 + 1600 * random.even());
      await cable!.pullOut();
      await page!.until(() => link() !== 'open');
      if (k === 0) {
        const before = await usedS(daemon!.pid);
        await wait(3000);
        idle = ((await usedS(daemon!.pid)) - before) / 3;
      }
      await wait(300 * random.even());
      await cable!.plugIn();
      const since = performance.now();
      await page!.until(() => link() === 'open');
      backAfterMs.push(performance.now() - since);
    }
    pulling = false;
  };
  const walking = walk();
  await pull();
  await walking;
  // One more take after the last break shows that the walk goes on.
  const before = page!.session!.counted.size;
  level!.order({ do: 'lift' });
  await page!.until(() => page!.last('live')?.live.steadiness === 'moving');
  level!.order({ do: 'stand', rest: 12 });
  await page!.until(() => page!.session!.counted.size > before);
  const shown = page!.session!.takes.map(({ event }) => event);
  expect(await page!.ask({ do: 'finish' })).toBeNull();

  const slowest = Math.round(Math.max(...backAfterMs));
  console.log(
    `${cycles} cycles: ${shown.length} takes; back at the latest ${slowest} ms after the port was; ` +
      `${(100 * idle).toFixed(1)} % of a processor while it was away`,
  );
  const [name] = (await readdir(join(folder, 'recordings'))).filter((file) => file.endsWith('.jsonl'));
  const path = join(folder, 'recordings', name!);
  const { events } = await readRecording(path);
  expect(events.filter(({ type }) => type === 'take')).toEqual(shown);
  const written = new Set(level!.frames);
  for (const event of events) if (event.type === 'reading') expect(written).toContain(event.raw);
  expect(await verifyRecording(path)).toMatchObject({ problems: [], closed: true });
  // Each break that cut a stream of readings is on record, and each is over.
  const gaps = events.filter(({ type }) => type === 'gap').map((gap) => 'is' in gap && gap.is);
  expect(gaps.length).toBeGreaterThan(0);
  expect(gaps).toEqual(gaps.map((_, k) => (k % 2 === 0 ? 'lost' : 'back')));
}, 900_000);
