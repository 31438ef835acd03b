import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import {
  type InstrumentsFile,
  instrumentsFileSchema,
  type ProvedInstrument,
} from '../../shared/proving/instruments.ts';
import { replaceFile } from '../replace-file.ts';
import { Turns } from '../session/turns.ts';

/**
 * What is remembered of instruments: the file `instruments.json` in the folder of the recordings. It is written
 * whole, beside the old one, and takes its place only when it is on the disk. A file that can't be read is left alone.
 */
export class InstrumentStore {
  readonly path: string;
  readonly #turns = new Turns();

  constructor(folder: string) {
    this.path = join(folder, 'instruments.json');
  }

  /**
   * Every proving that was kept, the oldest first.
   * @throws WayscribeError `instruments.invalid` when the file says something else
   */
  async proved(): Promise<readonly ProvedInstrument[]> {
    return (await this.#read()).proved;
  }

  /** Adds one proving; it is on the disk when this returns. */
  async keep(proved: ProvedInstrument): Promise<void> {
    await this.#turns.take(async () => {
      const before = await this.#read();
      await this.#write({ ...before, proved: [...before.proved, proved] });
    });
  }

  /**
   * Binds an instrument that was proved to another port; what was proved stays.
   * @throws WayscribeError `command.refused` when none of that name hangs on a cable
   */
  async bind(name: string, port: string): Promise<void> {
    await this.#turns.take(async () => {
      const before = await this.#read();
      const last = before.proved.findLast(({ proving }) => proving.name === name);
      if (last?.proving.source !== 'cable') {
        throw new WayscribeError(
          'command.refused',
          name,
          'no such instrument was proved',
          'get to know it first',
        );
      }
      const bound = { ...last, proving: { ...last.proving, port } };
      await this.#write({ ...before, proved: [...before.proved, bound] });
    });
  }

  async #read(): Promise<InstrumentsFile> {
    const text = await readFile(this.path, 'utf8').catch((error: NodeJS.ErrnoException) => {
      if (error.code === 'ENOENT') return null;
      throw this.#invalid(`cannot be read (${error.code})`);
    });
    if (text === null) return { instruments: 1, proved: [] };
    const parsed = instrumentsFileSchema.safeParse(this.#json(text));
    if (parsed.success) return parsed.data;
    const [issue] = parsed.error.issues;
    throw this.#invalid(`${issue?.path.join('.') || 'the whole'}: ${issue?.message}`);
  }

  #json(text: string): unknown {
    try {
      return JSON.parse(text);
    } catch (error) {
      throw this.#invalid(`is no JSON: ${(error as Error).message}`);
    }
  }

  #invalid(what: string): WayscribeError {
    return new WayscribeError(
      'instruments.invalid',
      this.path,
      what,
      'mend it, or put it aside under another name; nothing is written over it',
    );
  }

  async #write(file: InstrumentsFile): Promise<void> {
    await replaceFile(this.path, `${JSON.stringify(file, null, 2)}\n`);
  }
}
