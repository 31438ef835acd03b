import { fold } from '../session/fold.ts';
import type { SheetInput } from '../sheet/sheet.ts';
import { foldJob, type Job } from './job.ts';
import { type JobSurvey, surveyOf } from './survey.ts';
import type { SentJob } from './wire.ts';

/** A job with everything that its surveys come to. */
export interface OpenJob {
  readonly id: string;
  readonly link: string;
  readonly job: Job;
  /** In the order in which they were added. */
  readonly surveys: readonly JobSurvey[];
}

/**
 * A job as it was sent, folded and reduced.
 * @throws WayscribeError when a survey does not hang together
 */
export function openJob({ id, link, head, changes, surveys: sent }: SentJob): OpenJob {
  const job = foldJob(head, changes);
  const byNo = new Map(sent.map((survey) => [survey.no, survey]));
  const surveys = [...job.surfaces.values()]
    .flatMap((surface) => surface.rounds.map(({ survey }) => ({ surface, survey })))
    .sort((a, b) => a.survey.no - b.survey.no)
    .flatMap(({ surface, survey }): JobSurvey[] => {
      const from = byNo.get(survey.no);
      if (!from) return [];
      return from.as === 'recording'
        ? [surveyOf(surface, survey, { session: fold(from.header, from.events) })]
        : [surveyOf(surface, survey, { sheet: from.sheet as SheetInput })];
    });
  return { id, link, job, surveys };
}
