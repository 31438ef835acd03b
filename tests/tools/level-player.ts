import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';

/** What the level that is played is told to do. */
export type LevelOrder =
  | { do: 'lift' }
  | { do: 'stand'; rest: number }
  /** Slides on to where it rests there, without a jolt. */
  | { do: 'carry'; rest: number }
  | { do: 'write'; bytes: string };

/** A level played by another process. */
export class LevelPlayer {
  /** Every frame that it has written to its port. */
  readonly frames: string[] = [];
  readonly #process: ChildProcess;

  constructor(port: string, seed: number, everyMs = 50) {
    this.#process = spawn(
      process.execPath,
      ['--import', 'tsx', 'tests/tools/play-level.ts', port, String(seed), String(everyMs)],
      {
        stdio: ['pipe', 'pipe', 'inherit'],
      },
    );
    createInterface({ input: this.#process.stdout! }).on('line', (line) => {
      const told = JSON.parse(line) as { frame?: string };
      if (told.frame !== undefined) this.frames.push(told.frame);
    });
  }

  order(order: LevelOrder): void {
    this.#process.stdin!.write(`${JSON.stringify(order)}\n`);
  }

  async stop(): Promise<void> {
    if (this.#process.exitCode !== null) return;
    const gone = once(this.#process, 'exit');
    this.#process.kill();
    await gone;
  }
}
