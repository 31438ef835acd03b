/**
 * The long run. `npm run fuzz` sends a million damaged frames through every profile, a hundred thousand damaged messages and
 * as many requests to the daemon, and reads a hundred thousand damaged files; `npm run fuzz SEED` does the same again.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { shippedProfiles } from '../../protocols/shipped.ts';
import { fuzz, fuzzLine } from '../instruments/fuzz-run.ts';
import { DaemonProcess } from '../tools/daemon-process.ts';
import { documentLine, fuzzDocuments } from './document-run.ts';
import { documentKinds } from './documents.ts';
import { fuzzMessages, fuzzRequests, type ServerCount, serverLine } from './server-run.ts';

const seed = Number(process.argv[2] ?? Date.now() % 1_000_000);
const frames = 1_000_000;
const others = 100_000;
/** More than this nothing may hold after a long run, be it this process or the daemon. */
const mostGrownMiB = 16;
/** Whatever takes longer hangs, ms. */
const mostMs = 1000;
console.log(`seed ${seed}`);

function tell(line: string, count: Pick<ServerCount, 'faults' | 'grownMiB' | 'slowestMs'>): void {
  console.log(line);
  for (const fault of count.faults) console.log(`  ${fault}`);
  if (count.faults.length > 0 || count.grownMiB > mostGrownMiB || count.slowestMs > mostMs)
    process.exitCode = 1;
}

for (const profile of shippedProfiles) {
  const count = fuzz(profile, frames, seed);
  console.log(fuzzLine(profile.id, count));
  if (count.notWhole > 0) process.exitCode = 1;
  if (count.allowed !== null && count.wrong > count.allowed + 4 * Math.sqrt(count.allowed))
    process.exitCode = 1;
}

for (const kind of documentKinds) {
  const count = await fuzzDocuments(kind, Math.ceil(others / documentKinds.length), seed);
  tell(documentLine(kind.name, count), count);
}

const folder = mkdtempSync(join(tmpdir(), 'wayscribe-fuzz-'));
const daemon = await DaemonProcess.startMeasured('demo', '--folder', folder, '--lan');
const messages = await fuzzMessages(daemon, others, seed);
tell(serverLine('messages', messages), messages);
const requests = await fuzzRequests(daemon, others, seed);
tell(serverLine('requests', requests), requests);
await daemon.stop();
rmSync(folder, { recursive: true, force: true });
