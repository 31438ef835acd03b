import { execFile } from 'node:child_process';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';
import { WayscribeError } from '../../shared/errors.ts';
import type { Service, Step } from './service.ts';

/** Writes the service and starts it; what it says is told to the person. Throws `service.failed`. */
export async function installService(service: Service): Promise<string[]> {
  await mkdir(dirname(service.file), { recursive: true });
  await writeFile(service.file, service.text, service.encoding);
  const lost = await perform(service.start, `${service.file} is written`);
  return [`${service.file} is written, and Wayscribe runs by it.`, ...lost, ...untried(service)];
}

/** Stops the service and takes its file away. Throws `service.failed`. */
export async function removeService(service: Service): Promise<string[]> {
  if ((await written(service)) === null) return ['There is no such service.'];
  const lost = await perform(service.stop, `${service.file} is still there`);
  await rm(service.file, { force: true });
  return [`${service.file} is taken away. The recordings stay.`, ...lost, ...untried(service)];
}

/** Whether there is a service, whether it is the one of this program, and whether it runs. */
export async function serviceStatus(service: Service): Promise<{ sentences: string[]; runs: boolean }> {
  const text = await written(service);
  if (text === null) return { sentences: ['There is no service: wayscribe service install.'], runs: false };
  const { status } = await run(service.ask);
  const runs = status === 0;
  const sentences = [`${service.file} is there, and ${runs ? 'it runs' : 'it does not run'}.`];
  if (text !== service.text) {
    sentences.push(
      'It starts another program or version than this one: wayscribe service install renews it.',
    );
  }
  return { sentences: [...sentences, ...untried(service)], runs };
}

/** Every step in order; gives back what was lost by those that may fail. */
async function perform(steps: readonly Step[], otherwise: string): Promise<string[]> {
  const lost: string[] = [];
  for (const step of steps) {
    const { status, said } = await run(step);
    if (status === 0) continue;
    const line = step.run.join(' ');
    if (step.optional === undefined) {
      throw new WayscribeError(
        'service.failed',
        line,
        said || `ended with ${status}`,
        `${otherwise}; run that command yourself to see more`,
      );
    }
    lost.push(`"${line}" failed: ${step.optional}.`);
  }
  return lost;
}

function untried({ tested }: Service): string[] {
  return tested ? [] : ['Nobody has tried this on a system of this kind yet: look whether it starts again.'];
}

async function written({ file, encoding }: Service): Promise<string | null> {
  return readFile(file, encoding).catch(() => null);
}

function run({ run: [program, ...words] }: Step): Promise<{ status: number | string; said: string }> {
  return new Promise((resolve) => {
    execFile(program, words, { timeout: 30_000 }, (error, stdout, stderr) => {
      const said = (stderr || stdout).trim().split('\n').at(-1) ?? '';
      resolve({ status: error ? (error.code ?? 'a signal') : 0, said });
    });
  });
}
