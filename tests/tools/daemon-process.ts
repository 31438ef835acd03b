import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Readable } from 'node:stream';

/** The built program as a process of its own. */
export class DaemonProcess {
  readonly url: string;
  readonly #process: ChildProcess;

  private constructor(url: string, child: ChildProcess) {
    this.url = url;
    this.#process = child;
  }

  /** Starts `wayscribe …args`, on a free port unless one is named, and returns when it has said where its page is. */
  static start(...args: string[]): Promise<DaemonProcess> {
    return DaemonProcess.startWith([], ...args);
  }

  /** The same; it can be asked for `heldMiB`. */
  static startMeasured(...args: string[]): Promise<DaemonProcess> {
    return DaemonProcess.startWith(['--expose-gc', '--import', './tests/tools/tells-heap.js'], ...args);
  }

  /** The same with arguments for Node itself. */
  static async startWith(forNode: readonly string[], ...args: string[]): Promise<DaemonProcess> {
    const quiet = args[0] === 'demo' ? ['--no-open'] : [];
    const port = args.includes('--port') ? [] : ['--port', '0'];
    const all = [...forNode, 'dist/wayscribe.js', ...args, ...port, ...quiet];
    const child = spawn(process.execPath, all, {
      stdio: ['ignore', 'pipe', 'inherit', 'pipe'],
    });
    const url = await new Promise<string>((resolve, reject) => {
      let text = '';
      child.stdout!.on('data', (bytes) => {
        text += bytes;
        const found = /http:\/\/\S+/.exec(text);
        if (found) resolve(found[0]);
      });
      child.once('exit', (code) => reject(new Error(`the daemon ended with ${code}: ${text}`)));
    });
    return new DaemonProcess(url, child);
  }

  get pid(): number {
    return this.#process.pid!;
  }

  /** What it still holds after it has collected, MiB: without what the allocator keeps in reserve. */
  async heldMiB(): Promise<number> {
    const told = once(this.#process.stdio[3] as Readable, 'data');
    this.#process.kill('SIGUSR2');
    const [bytes] = await told;
    return Number(bytes) / 2 ** 20;
  }

  /** Ends it in order, or with SIGKILL in the middle of whatever it does. */
  async stop(signal: 'SIGTERM' | 'SIGKILL' = 'SIGTERM'): Promise<void> {
    if (this.#process.exitCode !== null || this.#process.signalCode !== null) return;
    const gone = once(this.#process, 'exit');
    this.#process.kill(signal);
    await gone;
  }
}
