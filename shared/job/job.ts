import { WayscribeError } from '../errors.ts';
import type { AgreedLimit, ChangeOf, JobChange, JobHead, JobTarget, NewChange } from './document.ts';
import { withdrawalOf } from './withdrawal.ts';

/** A survey of the job, and the passes that were scraped since the one before it of the same surface. */
export interface Round {
  readonly survey: ChangeOf<'survey'>;
  /** Every pass since the survey before: the stations that it covered. */
  readonly passes: readonly (readonly string[])[];
  /** What the blue showed after it, before more was scraped or measured. */
  readonly prints: readonly ChangeOf<'print'>[];
}

export interface JobSurface {
  readonly name: string;
  readonly madeFrom: readonly string[];
  readonly limits: readonly AgreedLimit[];
  readonly target: JobTarget | null;
  readonly rounds: readonly Round[];
  /** Passes after the last survey. */
  readonly passesSince: readonly (readonly string[])[];
  /** Number of the last change that made its metal another. */
  readonly changedNo: number;
  /** Number of the last change by which it was measured or checked. */
  readonly checkedNo: number;
}

/** What follows from the changes so far. Plain data, never changed in place. */
export interface Job {
  readonly head: JobHead;
  readonly changes: readonly JobChange[];
  readonly surfaces: ReadonlyMap<string, JobSurface>;
  readonly notes: readonly ChangeOf<'note'>[];
  readonly photos: readonly ChangeOf<'photo'>[];
}

/** The job after all of its changes. */
export function foldJob(head: JobHead, changes: readonly JobChange[]): Job {
  const withdrawn = new Set(changes.flatMap((each) => (each.change === 'withdrawn' ? each.of : [])));
  const standing = changes.filter(({ no }) => !withdrawn.has(no));
  const surfaces = new Map<string, JobSurface>();
  for (const change of standing) {
    if (!('surface' in change)) continue;
    surfaces.set(change.surface, withChange(surfaces.get(change.surface) ?? bare(change.surface), change));
  }
  return {
    head,
    changes,
    surfaces,
    notes: standing.filter((each) => each.change === 'note'),
    photos: standing.filter((each) => each.change === 'photo'),
  };
}

function bare(name: string): JobSurface {
  return {
    name,
    madeFrom: [],
    limits: [],
    target: null,
    rounds: [],
    passesSince: [],
    changedNo: 0,
    checkedNo: 0,
  };
}

function withChange(surface: JobSurface, change: Extract<JobChange, { surface: string }>): JobSurface {
  switch (change.change) {
    case 'surface':
      return { ...surface, madeFrom: change.madeFrom };
    case 'limits':
      return { ...surface, limits: change.limits };
    case 'target':
      return { ...surface, target: change.target };
    case 'passes':
      return {
        ...surface,
        passesSince: [...surface.passesSince, ...change.passes],
        changedNo: change.no,
      };
    case 'survey':
      return {
        ...surface,
        rounds: [...surface.rounds, { survey: change, passes: surface.passesSince, prints: [] }],
        passesSince: [],
        checkedNo: change.no,
      };
    case 'checked':
      return { ...surface, checkedNo: change.no };
    case 'print':
      return { ...surface, rounds: withPrint(surface.rounds, change) };
  }
}

function withPrint(rounds: readonly Round[], print: ChangeOf<'print'>): readonly Round[] {
  const newest = rounds.at(-1);
  return newest ? [...rounds.slice(0, -1), { ...newest, prints: [...newest.prints, print] }] : rounds;
}

/** The surfaces that one is made from, directly or through others, nearest first; never itself. */
export function upstreamOf(job: Pick<Job, 'surfaces'>, name: string): string[] {
  const found: string[] = [];
  const open = [...(job.surfaces.get(name)?.madeFrom ?? [])];
  for (let next = open.shift(); next !== undefined; next = open.shift()) {
    if (next === name || found.includes(next)) continue;
    found.push(next);
    open.push(...(job.surfaces.get(next)?.madeFrom ?? []));
  }
  return found;
}

/**
 * The surfaces from which this one was made and that were scraped after it was last measured or checked: it stands
 * to be checked again. Empty when nothing is known against it, and for one that was never measured.
 */
export function recheckBecauseOf(job: Pick<Job, 'surfaces'>, name: string): string[] {
  const checkedNo = job.surfaces.get(name)?.checkedNo ?? 0;
  if (checkedNo === 0) return [];
  return upstreamOf(job, name).filter((other) => (job.surfaces.get(other)?.changedNo ?? 0) > checkedNo);
}

/**
 * Proves that a change makes sense after those before it.
 * @throws WayscribeError `job.invalid`
 */
export function checkChange(job: Job, change: NewChange): void {
  if (change.change === 'withdrawn') {
    const target = job.changes.find(({ no }) => no === change.of);
    if (!target) throw invalid('of', `there is no change ${change.of}`, 'name one that is in the list');
    const before = withdrawalOf(target, job.changes);
    if (before) throw invalid('of', `it was withdrawn by change ${before.no}`, 'name one that stands');
    if (target.change === 'withdrawn') throw invalid('of', 'a withdrawal stands', 'make the change anew');
    return;
  }
  if (!('surface' in change)) return;
  if (change.change === 'surface') {
    const unknown = change.madeFrom.find((other) => !job.surfaces.has(other));
    if (unknown !== undefined) throw invalid('madeFrom', `there is no surface "${unknown}"`, 'add it first');
    const circle = change.madeFrom.find(
      (other) => other === change.surface || upstreamOf(job, other).includes(change.surface),
    );
    if (circle !== undefined) {
      throw invalid(
        'madeFrom',
        `"${circle}" is itself made from "${change.surface}"`,
        'leave one of them out',
      );
    }
  } else if (!job.surfaces.has(change.surface)) {
    throw invalid('surface', `there is no surface "${change.surface}"`, `name one of ${listOf(job)}`);
  }
  if (change.change === 'print') checkPrint(job, change);
}

function checkPrint(job: Job, { surface, photo }: Extract<NewChange, { change: 'print' }>): void {
  if (!job.surfaces.get(surface)?.rounds.length) {
    throw invalid(
      'surface',
      `"${surface}" was not measured yet`,
      'measure it first: a print goes with a survey',
    );
  }
  const kept = ({ file, sha256 }: ChangeOf<'photo'>) => file === photo?.file && sha256 === photo.sha256;
  if (photo && !job.photos.some(kept)) {
    throw invalid('photo', `there is no photo ${photo.file} in the job`, 'add it first');
  }
}

function listOf(job: Job): string {
  return [...job.surfaces.keys()].join(', ') || 'those that you add first';
}

function invalid(place: string, message: string, remedy: string): WayscribeError {
  return new WayscribeError('job.invalid', place, message, remedy);
}
