import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { testFolder } from '../../tests/tools/test-folder.ts';
import { unzip } from './unzip.ts';
import { unzipJob } from './unzip-job.ts';
import { zip } from './zip.ts';

const modified = new Date(2026, 2, 2);
const archive = (...names: string[]) =>
  zip(names.map((name) => ({ name, bytes: Buffer.from(`what is in ${name}`), modified })));

describe('an archive', () => {
  test('comes apart into what was put in', () => {
    expect(unzip(archive('a/b', 'a/bänke'))).toEqual(
      ['a/b', 'a/bänke'].map((name) => ({ name, bytes: Buffer.from(`what is in ${name}`) })),
    );
  });
  test('is refused when it comes to more than is allowed, by its own word or in truth', () => {
    const much = zip([{ name: 'a/b', bytes: Buffer.alloc(100_000), modified }]);
    expect(() => unzip(much, { files: 9, bytes: 99_999 })).toThrow('more than 99999 bytes');
    expect(() => unzip(archive('a/b', 'a/c'), { files: 1, bytes: 999 })).toThrow('holds 2 files');
    const lying = Buffer.from(much);
    lying.writeUInt32LE(10, lying.length - 22 - 49 + 24);
    expect(() => unzip(lying, { files: 9, bytes: 99_999 })).toThrow('"a/b" is damaged');
  });
  test('that is cut off anywhere is refused', () => {
    const whole = archive('a/b');
    for (let length = 0; length < whole.length; length += 1) {
      expect(() => unzip(whole.subarray(0, length))).toThrow('no ZIP archive');
    }
  });
});

describe('a job in an archive', () => {
  const put = async (...names: string[]) => {
    const folder = testFolder();
    await writeFile(join(folder, 'job.zip'), archive(...names));
    return { file: join(folder, 'job.zip'), into: join(folder, 'into'), folder };
  };

  test('is laid into a folder of its own, and never over another', async () => {
    const { file, into } = await put('bed/job.json', 'bed/way.jsonl');
    const path = await unzipJob(file, into);
    expect(path).toBe(join(into, 'bed'));
    expect(await readFile(join(path, 'way.jsonl'), 'utf8')).toBe('what is in bed/way.jsonl');
    await writeFile(join(path, 'way.jsonl'), 'mine');
    await expect(unzipJob(file, into)).rejects.toMatchObject({ code: 'job.exists' });
    expect(await readFile(join(path, 'way.jsonl'), 'utf8')).toBe('mine');
  });

  test.each([
    ['../job.json'],
    ['bed/../../job.json'],
    ['/bed/job.json'],
    ['bed\\..\\job.json', 'bed/job.json'],
    ['bed/..', 'bed/job.json'],
    ['bed/C:way', 'bed/job.json'],
    ['bed/.locked', 'bed/job.json'],
    ['bed/deep/way', 'bed/job.json'],
    ['bed/job.json', 'slide/job.json'],
    ['bed/way', 'bed/WAY', 'bed/job.json'],
    ['bed/a\u0000', 'bed/job.json'],
    ['bed/way'],
    [],
  ])('%j is refused, and nothing is written', async (...names) => {
    const { file, into, folder } = await put(...names);
    await expect(unzipJob(file, into)).rejects.toMatchObject({ code: 'job.invalid', place: file });
    expect(await readdir(folder)).toEqual(['job.zip']);
  });
});
