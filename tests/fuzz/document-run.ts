import { mkdirSync, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { isWayscribeError } from '../../shared/errors.ts';
import { random } from '../tools/random.ts';
import { type DocumentKind, folderFor, put } from './documents.ts';
import { mutated } from './mutate.ts';

export interface DocumentCount {
  readonly tries: number;
  /** Files that were read to the end with nothing to say. */
  readonly read: number;
  /** What went wrong: an error that is not ours, or that names no place, or one that took too long. */
  readonly faults: readonly string[];
  /** Longest processor time of one file, ms. */
  readonly slowestMs: number;
  /** How much more the heap holds at the end than after the first fifth, MiB. */
  readonly grownMiB: number;
}

const tooLongMs = 1000;
const faultsKept = 10;

/** Damages files of one kind, reads each as the program does, and counts what goes wrong. */
export async function fuzzDocuments(kind: DocumentKind, tries: number, seed: number): Promise<DocumentCount> {
  const numbers = random(seed);
  const folder = folderFor(kind);
  const faults: string[] = [];
  let [read, slowestMs, heapBefore] = [0, 0, 0];
  try {
    mkdirSync(dirname(join(folder, kind.file)), { recursive: true });
    const sound = await kind.sound(folder);
    const gc = collector();
    for (let k = 0; k < tries; k += 1) {
      if (k === Math.floor(tries / 5)) heapBefore = heapAfter(gc);
      const damaged = mutated(sound[k % sound.length]!, numbers);
      const content = numbers.below(2) === 0 ? damaged : (kind.sealAnew?.(damaged) ?? damaged);
      const path = put(folder, kind, content);
      const before = process.cpuUsage();
      let fault: string | null = null;
      try {
        const said = await kind.read(path, folder);
        if (said.length === 0) read += 1;
        if (said.some((one) => one === '')) fault = 'something is wrong without a place';
      } catch (error) {
        if (!isWayscribeError(error)) fault = String((error as Error)?.stack ?? error);
        else if (!error.place || !error.detail) fault = `no place or no words: ${error.message}`;
      }
      const { user, system } = process.cpuUsage(before);
      const ms = (user + system) / 1000;
      slowestMs = Math.max(slowestMs, ms);
      if (ms > tooLongMs) fault ??= `took ${Math.round(ms)} ms`;
      if (fault && faults.length < faultsKept) faults.push(`try ${k} of seed ${seed}: ${fault}`);
    }
    return { tries, read, faults, slowestMs, grownMiB: (heapAfter(gc) - heapBefore) / 2 ** 20 };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What came out, for people. */
export function documentLine(
  name: string,
  { tries, read, faults, slowestMs, grownMiB }: DocumentCount,
): string {
  return (
    `${name.padEnd(20)} ${tries} files: ${read} read, ${tries - read} refused or named, ${faults.length} faults; ` +
    `slowest ${slowestMs.toFixed(0)} ms, heap ${grownMiB.toFixed(1)} MiB more`
  );
}

function collector(): () => void {
  setFlagsFromString('--expose-gc');
  return runInNewContext('gc');
}

function heapAfter(gc: () => void): number {
  gc();
  return process.memoryUsage().heapUsed;
}
