import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import { expect } from 'vitest';

const program = join(import.meta.dirname, '..', '..', 'dist', 'wayscribe.js');

export interface Outcome {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The built program as a person starts it; what it says is read from its pipes. */
export function startProgram(...args: string[]) {
  if (!existsSync(program)) throw new Error('there is no dist/wayscribe.js: run npm run build first');
  return spawn(process.execPath, [program, ...args], { stdio: ['ignore', 'pipe', 'pipe'] });
}

/** The built program run to its end. */
export async function wayscribe(...args: string[]): Promise<Outcome> {
  const child = startProgram(...args);
  const ended = statusOf(child);
  const [stdout, stderr] = await Promise.all([text(child.stdout), text(child.stderr)]);
  return { status: await ended, stdout, stderr };
}

/** Status of a program that was started, once it has ended. */
export function statusOf(child: ChildProcess): Promise<number | null> {
  return new Promise((resolve) => child.on('close', resolve));
}

/** One line on stderr that names the place, nothing on stdout, and status 2: what was given can't be used. */
export function expectRefused({ status, stdout, stderr }: Outcome, place: string): void {
  expect(stderr).toContain(place);
  expect(stderr.trimEnd().split('\n'), 'lines on stderr').toHaveLength(1);
  expect(stdout).toBe('');
  expect(status).toBe(2);
}
