import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { delimiter, join } from 'node:path';
import { createInterface } from 'node:readline';

/** A real broker on this computer, that can go away and come back with what it knew. */
export class Mosquitto {
  readonly address: string;
  readonly #settings: string;
  #process: ChildProcess | null = null;

  private constructor(address: string, settings: string) {
    this.address = address;
    this.#settings = settings;
  }

  /** Prepares one in that folder; it is not running yet. */
  static async in(folder: string): Promise<Mosquitto> {
    const port = await freePort();
    const settings = join(folder, 'mosquitto.conf');
    const lines = [
      `listener ${port} 127.0.0.1`,
      'allow_anonymous true',
      'persistence true',
      `persistence_location ${folder}/`,
      'log_dest stderr',
      'max_queued_messages 0',
    ];
    // It would else become a user who may not write here.
    if (process.getuid?.() === 0) lines.push('user root');
    writeFileSync(settings, `${lines.join('\n')}\n`);
    return new Mosquitto(`mqtt://127.0.0.1:${port}`, settings);
  }

  async start(): Promise<void> {
    const child = spawn(programPath(), ['-c', this.#settings], { stdio: ['ignore', 'ignore', 'pipe'] });
    this.#process = child;
    const said: string[] = [];
    for await (const line of createInterface({ input: child.stderr! })) {
      said.push(line);
      if (/ running$/.test(line)) {
        child.stderr!.resume();
        return;
      }
    }
    throw new Error(`mosquitto did not start: ${said.join('\n')}`);
  }

  async stop(): Promise<void> {
    const child = this.#process;
    this.#process = null;
    if (!child || child.exitCode !== null) return;
    const gone = once(child, 'exit');
    child.kill('SIGTERM');
    await gone;
  }
}

/** Debian puts it where only administrators look. */
function programPath(): string {
  const folders = [...(process.env.PATH ?? '').split(delimiter), '/usr/sbin', '/usr/local/sbin'];
  const found = folders.map((folder) => join(folder, 'mosquitto')).find((path) => existsSync(path));
  if (!found) throw new Error('mosquitto is not installed: node tests/tools/obtain.js says how to');
  return found;
}

async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const { port } = server.address() as { port: number };
  server.close();
  await once(server, 'close');
  return port;
}
