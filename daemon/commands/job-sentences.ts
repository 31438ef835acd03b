import { type Job, recheckBecauseOf } from '../../shared/job/job.ts';
import type { OpenJob } from '../../shared/job/open.ts';
import { metalSentences, unreadableSentence, verdictSentences } from '../../shared/report/words.ts';

/** How a job stands in plain sentences, one a line. Without surveys: what was agreed. */
export function jobSentences(
  job: Job,
  { surveys, unreadable }: Pick<OpenJob, 'surveys' | 'unreadable'>,
): string[] {
  const surfaces = [...job.surfaces.values()].flatMap((surface) => {
    const from = surface.madeFrom.length > 0 ? `, made from ${surface.madeFrom.join(' and ')}` : '';
    const limits = surface.limits.map(
      ({ figure, max, source }) => `  Limit of ${figure}: ${max} (${source}).`,
    );
    const rounds = surveys
      .filter(({ record }) => record.surface === surface.name)
      .flatMap((survey) => [
        `  ${survey.record.round}, ${survey.record.at.slice(0, 10)}: ${[...metalSentences(survey), ...verdictSentences(survey)].join(' ')}`,
      ]);
    const recheck = recheckBecauseOf(job, surface.name);
    return [
      `${surface.name}${from}`,
      ...limits,
      ...rounds,
      ...(recheck.length > 0 ? [`  Check it again: ${recheck.join(', ')} was scraped after it.`] : []),
    ];
  });
  return [
    `${job.head.part}${job.head.owner && `, for ${job.head.owner}`}`,
    ...surfaces,
    ...unreadable.map(({ record, problem }) => unreadableSentence(record, problem)),
    `${job.changes.length} changes, each with its number: \`wayscribe job changes\`.`,
  ];
}
