import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { LevelOrder } from './level-player.ts';

/** An indicator played by another process, in the words of a profile. */
export class InstrumentPlayer {
  readonly #process: ChildProcess;

  constructor(port: string, profile: string, seed: number) {
    this.#process = spawn(
      process.execPath,
      ['--import', 'tsx', 'tests/tools/play-instrument.ts', port, profile, String(seed)],
      { stdio: ['pipe', 'inherit', 'inherit'] },
    );
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
