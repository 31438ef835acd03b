import { isWayscribeError } from '../errors.ts';
import { fold } from '../session/fold.ts';
import type { SheetInput } from '../sheet/sheet.ts';
import type { ChangeOf } from './document.ts';
import { foldJob, type Job } from './job.ts';
import { type JobSurvey, surveyOf } from './survey.ts';
import type { SentJob } from './wire.ts';

/** A survey of the job that cannot be read, and why. The job goes on without it. */
export interface UnreadableSurvey {
  readonly record: ChangeOf<'survey'>;
  readonly problem: string;
}

/** A job with everything that its surveys come to. */
export interface OpenJob {
  readonly id: string;
  readonly link: string;
  readonly job: Job;
  /** In the order in which they were added. */
  readonly surveys: readonly JobSurvey[];
  readonly unreadable: readonly UnreadableSurvey[];
}

/** A job as it was sent, folded and reduced. What does not hang together is among the unreadable. */
export function openJob({ id, link, head, changes, surveys: sent }: SentJob): OpenJob {
  const job = foldJob(head, changes);
  const byNo = new Map(sent.map((survey) => [survey.no, survey]));
  const surveys: JobSurvey[] = [];
  const unreadable: UnreadableSurvey[] = [];
  const records = [...job.surfaces.values()]
    .flatMap((surface) => surface.rounds.map(({ survey }) => ({ surface, record: survey })))
    .sort((a, b) => a.record.no - b.record.no);
  for (const { surface, record } of records) {
    const from = byNo.get(record.no);
    if (!from) continue;
    if (from.as === 'unreadable') {
      unreadable.push({ record, problem: from.problem });
      continue;
    }
    try {
      surveys.push(
        from.as === 'recording'
          ? surveyOf(surface, record, { session: fold(from.header, from.events) })
          : surveyOf(surface, record, { sheet: from.sheet as SheetInput }),
      );
    } catch (error) {
      if (!isWayscribeError(error)) throw error;
      unreadable.push({ record, problem: error.message });
    }
  }
  return { id, link, job, surveys, unreadable };
}
