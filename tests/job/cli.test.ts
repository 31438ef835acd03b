import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { testFolder } from '../tools/test-folder.ts';

/** The built program, run as a person runs it. */
const program = join(import.meta.dirname, '..', '..', 'dist', 'wayscribe.js');
const recordings = join(import.meta.dirname, '..', '..', 'recordings');

beforeAll(() => {
  if (!existsSync(program)) throw new Error('there is no dist/wayscribe.js: run npm run build first');
});

function wayscribe(...args: string[]): { status: number | null; stdout: string; stderr: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], { encoding: 'utf8' });
  return { status, stdout, stderr };
}

function well(...args: string[]): string {
  const { status, stdout, stderr } = wayscribe(...args);
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return stdout;
}

describe('a job on the command line', () => {
  test('from new to a proved report and an archive', () => {
    const folder = testFolder();
    const job = join(folder, 'bed-03');
    well('job', 'new', job, '--part', 'bed 03');
    well('job', 'agree', job, 'front way', '--limit', 'straightness=10', '--source', 'agreed', '--by', 'a');
    well(
      'job',
      'target',
      job,
      'front way',
      '--bite',
      '4',
      '--stop',
      '1',
      '--measure-after',
      '3',
      '--by',
      'a',
    );
    well('job', 'add', job, join(recordings, 'rebuild', 'front-way-as-found.jsonl'), '--by', 'a');
    well('job', 'scraped', job, 'front way', 'F0', 'F0,F1', 'F0,F1', '--by', 'a');
    well('job', 'add', job, join(recordings, 'rebuild', 'front-way-in-work-1.jsonl'), '--by', 'a');
    well('job', 'note', job, 'oiled and left overnight', '--by', 'a');
    expect(well('job', 'show', job)).toContain('as found');
    expect(well('job', 'list', '--folder', folder)).toBe('bed-03: bed 03; front way (in work 1)\n');

    well('report', job, '--by', 'a');
    const report = readFileSync(join(job, 'report.html'), 'utf8');
    expect(report.includes('Scrape: front way')).toBe(true);
    expect(report.includes('oiled and left overnight')).toBe(true);
    expect(well('verify', job)).toContain('Every file of the job is as it was written.\n4 files.');

    const archive = join(folder, 'bed.zip');
    expect(well('job', 'zip', job, '--out', archive)).toContain('4 files');
    expect(readFileSync(archive).subarray(0, 2).toString()).toBe('PK');
    const elsewhere = join(folder, 'elsewhere');
    expect(well('job', 'open', archive, '--folder', elsewhere)).toContain(
      'Every file of the job is as it was written.\n4 files.',
    );
    expect(well('job', 'show', join(elsewhere, 'bed-03'))).toBe(well('job', 'show', job));
    expect(wayscribe('job', 'open', archive, '--folder', elsewhere).stderr).toContain(
      'there is something already',
    );

    const file = join(job, 'front-way-as-found.jsonl');
    const lines = readFileSync(file, 'utf8').split('\n');
    writeFileSync(
      file,
      lines
        .with(
          7,
          lines[7]!.replace(/\d/, (digit) => String((Number(digit) + 1) % 10)),
        )
        .join('\n'),
    );
    const { status, stdout } = wayscribe('verify', job);
    expect(status).toBe(1);
    expect(stdout).toContain('front-way-as-found.jsonl line 8: ');
  });

  test('a change that is withdrawn stays in the list, and no longer counts', () => {
    const job = join(testFolder(), 'job');
    well('job', 'new', job, '--part', 'bed');
    well('job', 'add', job, join(recordings, 'rebuild', 'front-way-as-found.jsonl'), '--by', 'a');
    expect(well('job', 'changes', job)).toContain('2  ');
    const [no] = /^(\d+) .*survey of front way, as found/m.exec(well('job', 'changes', job))!.slice(1);
    well('job', 'withdraw', job, no!, 'the wrong bed', '--by', 'a');
    expect(well('job', 'changes', job)).toContain('; withdrawn by 3');
    const { stderr } = wayscribe('job', 'withdraw', job, no!, 'twice');
    expect(stderr).toContain('it was withdrawn by change 3');
    expect(well('job', 'show', job)).not.toContain('as found');
    expect(readFileSync(join(job, 'job.json'), 'utf8')).toContain('front-way-as-found.jsonl');
  });

  test('passes are on stations that were surveyed, singly or as runs', () => {
    const job = join(testFolder(), 'job');
    well('job', 'new', job, '--part', 'bed');
    well('job', 'add', job, join(recordings, 'rebuild', 'front-way-as-found.jsonl'), '--by', 'a');
    const { status, stderr } = wayscribe('job', 'scraped', job, 'front way', 'F0-F2', 'F99');
    expect(status).toBe(2);
    expect(stderr).toContain('"front way" has no station "F99"');
    expect(stderr).toContain('F0–\u2060F12');
    expect(well('job', 'scraped', job, 'front way', 'F0-F2,F9')).toContain('1 pass on front way noted');
    expect(readFileSync(join(job, 'job.json'), 'utf8')).toContain('[["F0","F1","F2","F9"]]');
  });

  test.each([
    [['job', 'show', 'nowhere'], 'there is no job'],
    [['report', 'nowhere'], 'there is no job'],
    [['job', 'add', 'x'], 'missing required argument'],
    [['job', 'new', 'x'], '--part'],
    [['job', 'mend', 'x'], 'unknown command'],
  ])('%j is refused in one line', (args, words) => {
    const { status, stdout, stderr } = wayscribe(...args);
    expect(stderr).toContain(words);
    expect(stderr.trimEnd().split('\n')).toHaveLength(1);
    expect(stdout).toBe('');
    expect(status).toBe(2);
  });

  test('what is no recording, or is broken, is not taken in', () => {
    const folder = testFolder();
    const job = join(folder, 'job');
    well('job', 'new', job, '--part', 'bed');
    const broken = join(folder, 'broken.jsonl');
    writeFileSync(
      broken,
      readFileSync(join(recordings, 'front-way-as-found.jsonl'), 'utf8').replace('"seq":5,', '"seq":50,'),
    );
    const { status, stderr } = wayscribe('job', 'add', job, broken);
    expect(stderr).toContain('broken.jsonl line 6');
    expect(status).toBe(2);
    expect(readFileSync(join(job, 'job.json'), 'utf8')).toContain('"count":0');
  });
});
