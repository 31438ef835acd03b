import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { setTimeout as wait } from 'node:timers/promises';

/** Two pseudo-terminals joined like the two ends of a cable. Pulled out, both are gone; it can be put back. */
export class PtyPair {
  readonly a: string;
  readonly b: string;
  #socat: ChildProcess | null = null;

  constructor(folder: string) {
    this.a = `${folder}/instrument-end`;
    this.b = `${folder}/daemon-end`;
  }

  async plugIn(): Promise<void> {
    this.#socat = spawn('socat', [`pty,raw,echo=0,link=${this.a}`, `pty,raw,echo=0,link=${this.b}`], {
      stdio: 'ignore',
    });
    await present(this.a);
    await present(this.b);
  }

  async pullOut(): Promise<void> {
    const socat = this.#socat;
    this.#socat = null;
    if (!socat || socat.exitCode !== null) return;
    const gone = once(socat, 'exit');
    socat.kill('SIGTERM');
    await gone;
  }
}

/** Settles when there is a file of that name. Asked again and again: a watch that begins too late waits for ever. */
async function present(path: string): Promise<void> {
  while (!existsSync(path)) await wait(5);
}
