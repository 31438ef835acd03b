import { describe, expect, test } from 'vitest';
import type { NewChange } from './document.ts';
import { changeSchema } from './document.ts';
import { checkChange, foldJob, type Job, recheckBecauseOf, upstreamOf } from './job.ts';

const stamp = { at: '2026-03-02T08:00:00Z', by: 'a' };
const head = { job: 1, part: 'lathe', owner: '' } as const;

function jobOf(...changes: Omit<NewChange, 'at' | 'by'>[]): Job {
  return changes.reduce<Job>(
    (job, change) => {
      const next = { ...stamp, ...change } as NewChange;
      checkChange(job, next);
      return foldJob(head, [...job.changes, changeSchema.parse({ no: job.changes.length + 1, ...next })]);
    },
    foldJob(head, []),
  );
}

const surface = (name: string, ...madeFrom: string[]) =>
  ({ change: 'surface', surface: name, madeFrom }) as const;
const survey = (name: string, round = 'as found') =>
  ({
    change: 'survey',
    surface: name,
    round,
    file: `${name} ${round}.jsonl`.replaceAll(' ', '-'),
    sha256: '0'.repeat(64),
    link: null,
  }) as const;
const passes = (name: string) =>
  ({ change: 'passes', surface: name, passes: [['F0', 'F1'], ['F0']] }) as const;

describe('what is made from what', () => {
  const chain = [surface('bed'), surface('saddle', 'bed'), surface('cross slide', 'saddle')];

  test('scraping a surface marks all that were made from it, directly or not', () => {
    const job = jobOf(...chain, survey('bed'), survey('saddle'), survey('cross slide'), passes('bed'));
    expect(upstreamOf(job, 'cross slide')).toEqual(['saddle', 'bed']);
    expect(recheckBecauseOf(job, 'saddle')).toEqual(['bed']);
    expect(recheckBecauseOf(job, 'cross slide')).toEqual(['bed']);
    expect(recheckBecauseOf(job, 'bed')).toEqual([]);
  });

  test('a new survey, or a check with its reason, takes the mark away', () => {
    const before = [...chain, survey('saddle'), survey('cross slide'), passes('bed')];
    const checked = { change: 'checked', surface: 'cross slide', why: 'swept, nothing moved' } as const;
    const job = jobOf(...before, survey('saddle', 'as left'), checked);
    expect(recheckBecauseOf(job, 'saddle')).toEqual([]);
    expect(recheckBecauseOf(job, 'cross slide')).toEqual([]);
  });

  test('what was never measured need not be checked again', () => {
    expect(recheckBecauseOf(jobOf(...chain, survey('bed'), passes('bed')), 'saddle')).toEqual([]);
  });

  test('a circle and an unknown surface are refused', () => {
    expect(() => jobOf(...chain, surface('bed', 'cross slide'))).toThrow('is itself made from "bed"');
    expect(() => jobOf(surface('bed', 'bed'))).toThrow();
    expect(() => jobOf(surface('saddle', 'bed'))).toThrow('there is no surface "bed"');
    expect(() => jobOf(survey('bed'))).toThrow('there is no surface "bed"');
  });
});

describe('rounds', () => {
  test('a round holds the passes since the one before it', () => {
    const job = jobOf(
      surface('bed'),
      survey('bed'),
      passes('bed'),
      passes('bed'),
      survey('bed', 'in work 1'),
      passes('bed'),
    );
    const { rounds, passesSince } = job.surfaces.get('bed')!;
    expect(rounds.map(({ passes: taken }) => taken.length)).toEqual([0, 4]);
    expect(passesSince).toHaveLength(2);
  });

  test('a withdrawn survey is gone from the rounds and stays in the list', () => {
    const withdrawn = { change: 'withdrawn', of: 4, reason: 'wrong level' } as const;
    const job = jobOf(surface('bed'), survey('bed'), passes('bed'), survey('bed', 'in work 1'), withdrawn);
    const bed = job.surfaces.get('bed')!;
    expect(bed.rounds.map(({ survey: { round } }) => round)).toEqual(['as found']);
    expect(bed.passesSince).toHaveLength(2);
    expect(job.changes).toHaveLength(5);
  });
});
