import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { readRecording } from '../daemon/recording/reader.ts';
import { verifyRecording } from '../daemon/recording/verify.ts';
import { seededRandom } from '../daemon/simulate/random.ts';
import { isKept, type SessionEvent } from '../shared/session/events.ts';
import { setupSchema } from '../shared/session/setup.ts';
import { DaemonProcess } from './tools/daemon-process.ts';
import { LevelPlayer } from './tools/level-player.ts';
import { PageClient } from './tools/page-client.ts';
import { PtyPair } from './tools/pty-pair.ts';

/** How often the daemon is killed: a few times in the tests, 500 by `npm run soak`. */
const kills = Number(process.env.KILLS ?? 12);
const seed = Number(process.env.SEED ?? 53);
const random = seededRandom(seed);
const everyMs = 5;

let folder = '';
let cable: PtyPair | undefined;
let level: LevelPlayer | undefined;
let daemon: DaemonProcess | undefined;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'wayscribe-'));
  cable = new PtyPair(folder);
  await cable.plugIn();
  level = new LevelPlayer(cable.a, seed, everyMs);
});
afterAll(async () => {
  await daemon?.stop();
  await level?.stop();
  await cable?.pullOut();
  await rm(folder, { recursive: true, force: true });
});

/** Takes, takes again, voids and notes without end, until the daemon is gone. */
async function work(page: PageClient): Promise<void> {
  const { header } = page;
  const gone = page.gone().then(() => 'gone' as const);
  const stations = header!.setup.kind === 'way' ? header!.setup.stations : 2;
  for (let k = 0; ; k += 1) {
    const at = Math.floor(random.even() * (stations - 1));
    const place = { run: 'way out', at: [`F${at}`, `F${at + 1}`] as [string, string] };
    const last = page.events.findLast(({ type }) => type === 'take');
    const done = [
      page.ask({ do: 'aim', place }),
      page.ask({ do: 'take', by: 'key', insist: true }),
      ...(k % 3 === 0 ? [page.ask({ do: 'note', text: `note ${k}` })] : []),
      ...(k % 5 === 0 && last ? [page.ask({ do: 'void', take: last.seq, reason: 'bumped' })] : []),
    ];
    if ((await Promise.race([Promise.all(done).then(() => wait(20)), gone])) === 'gone') return;
  }
}

test(`killed ${kills} times at random moments of a walk at ${1000 / everyMs} readings a second, it loses nothing shown`, async () => {
  console.log(`seed ${seed}`);
  const recordings = join(folder, 'recordings');
  const setup = setupSchema.parse({
    kind: 'way',
    part: 'Test bench 3',
    surface: 'way',
    lengthMm: 9_900,
    baseMm: 100,
    stations: 100,
    back: 'no',
    instrument: { name: 'level', source: 'cable', port: cable!.b, profile: 'line-decimal', unit: 'um/m' },
  });
  const shown = new Map<number, SessionEvent>();
  let [torn, readings, takes] = [0, 0, 0];
  for (let k = 0; k < kills; k += 1) {
    daemon = await DaemonProcess.start('serve', '--folder', recordings);
    const page = await PageClient.open(daemon.url);
    if (k === 0) expect(await page.ask({ do: 'start', setup })).toBeNull();
    expect(page.header?.setup.part, `kill ${k}`).toBe('Test bench 3');
    level!.order({ do: 'lift' });
    level!.order({ do: 'stand', rest: 40 * random.normal() });
    const working = work(page);
    await wait(1200 * random.even());
    await daemon.stop('SIGKILL');
    await working;
    for (const event of page.events) shown.set(event.seq, event);
    takes = [...shown.values()].filter(({ type }) => type === 'take').length;

    const [name] = (await readdir(recordings)).filter((file) => file.endsWith('.jsonl'));
    const path = join(recordings, name!);
    const report = await verifyRecording(path);
    const whole = (await readFile(path)).at(-1) === 10;
    if (!whole) torn += 1;
    expect(report.problems, `kill ${k}`).toEqual(
      whole ? [] : [expect.objectContaining({ line: report.lines, what: 'is torn: it has no line end' })],
    );
    const { events } = await readRecording(path);
    readings = events.filter(({ type }) => type === 'reading').length;
    const written = new Map(events.filter(isKept).map((event) => [event.seq, event]));
    for (const [seq, event] of shown) expect(written.get(seq), `shown before kill ${k}`).toEqual(event);
  }
  console.log(`${kills} kills: ${takes} takes shown, ${readings} readings on record, ${torn} torn tails`);
  expect(takes).toBeGreaterThan(kills);
}, 7_200_000);
