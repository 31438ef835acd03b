import { randomUUID } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, rm, statfs, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import pack from '../../package.json' with { type: 'json' };
import { lockFolder } from '../recording/lock.ts';
import { RecordingStore } from '../recording/store.ts';
import type { Finding } from './finding.ts';

/** Below this there is no room for a survey, and a day's work needs more than this, bytes. */
const tooLittle = 50e6;
const little = 1e9;
/** No computer that reads this program is older. */
const programMadeIn = 2025;
const minuteMs = 60_000;

/** Whether this Node is new enough. */
export function checkNode(version = process.versions.node): Finding {
  const [, major = 0, minor = 0] = (/(\d+)\.(\d+)/.exec(pack.engines.node) ?? []).map(Number);
  const [hasMajor = 0, hasMinor = 0] = version.split('.').map(Number);
  const enough = hasMajor > major || (hasMajor === major && hasMinor >= minor);
  if (enough) return { what: 'Node', is: 'good', says: version };
  return {
    what: 'Node',
    is: 'bad',
    says: `${version} is too old`,
    remedy: `install Node ${major}.${minor} or later`,
  };
}

/** Whether recordings can be written there, and whether a daemon has the folder. */
export async function checkFolder(folder: string): Promise<Finding> {
  const probe = join(folder, `.probe-${randomUUID()}`);
  try {
    await mkdir(folder, { recursive: true });
    await writeFile(probe, 'x', { flush: true });
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    const remedy = 'give yourself the right to write there, or choose another folder with --folder';
    return { what: 'Folder', is: 'bad', says: `${folder} can't be written (${code})`, remedy };
  } finally {
    await rm(probe, { force: true }).catch(() => {});
  }
  return { what: 'Folder', is: 'good', says: isHeld(folder) ? `${folder}, a daemon has it` : folder };
}

function isHeld(folder: string): boolean {
  try {
    lockFolder(folder)();
    return false;
  } catch {
    return true;
  }
}

/** Whether there is room. */
export async function checkDisk(folder: string): Promise<Finding> {
  const found = await statfs(folder).catch(() => null);
  if (!found) return { what: 'Disk', is: 'mind', says: 'nobody can tell how much room there is' };
  const free = found.bavail * found.bsize;
  const says = `${(free / 1e9).toFixed(free < 10e9 ? 1 : 0)} GB free`;
  if (free >= little) return { what: 'Disk', is: 'good', says };
  return { what: 'Disk', is: free < tooLittle ? 'bad' : 'mind', says, remedy: 'make room on that disk' };
}

/** Whether the clock can be right: recordings are dated by it. */
export async function checkClock(folder: string, now = Date.now()): Promise<Finding> {
  const { recordings } = await new RecordingStore(folder).list().catch(() => ({ recordings: [] }));
  const newest = Math.max(0, ...recordings.map(({ t }) => t));
  const says = new Date(now).toString();
  const remedy = 'set the clock of this computer: recordings are dated by it';
  if (new Date(now).getFullYear() < programMadeIn) return { what: 'Clock', is: 'bad', says, remedy };
  if (now + minuteMs < newest) {
    return { what: 'Clock', is: 'bad', says: `${says}, but a recording is of ${new Date(newest)}`, remedy };
  }
  return { what: 'Clock', is: 'good', says };
}

/** Whether the page was built into this program. */
export function checkPage(folder: string): Finding {
  if (existsSync(join(folder, 'index.html'))) return { what: 'Page', is: 'good', says: 'is there' };
  return { what: 'Page', is: 'bad', says: 'is missing', remedy: 'run npm run build, or install it again' };
}
