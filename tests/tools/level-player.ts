import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import type { Shape } from '../../daemon/simulate/level.ts';

/** What the level that is played is told to do. */
export type LevelOrder =
  | { do: 'lift' }
  | { do: 'stand'; fromMm: number; toMm: number; facing: 1 | -1 }
  | { do: 'write'; bytes: string };

/** The hidden shape of the way on which the level is played, mm → µm; constructed, different for each seed. */
export function shapeOf(seed: number): Shape {
  return (xMm) =>
    -11 * Math.exp(-(((xMm - 700 - 20 * seed) / 330) ** 2)) + 2 * Math.sin(xMm / 230) + 0.02 * xMm;
}

/** A level played by another process. */
export class LevelPlayer {
  /** Every frame that it has written to its port. */
  readonly frames: string[] = [];
  readonly #process: ChildProcess;

  constructor(port: string, seed: number) {
    this.#process = spawn(
      process.execPath,
      ['--import', 'tsx', 'tests/tools/play-level.ts', port, String(seed)],
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
