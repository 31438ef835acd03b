import type { JobSurface } from '../../../shared/job/job.ts';
import type { OpenJob } from '../../../shared/job/open.ts';
import type { AskedChange } from '../../../shared/job/wire.ts';
import type { SentError } from '../../../shared/messages.ts';
import { type History, historiesOf } from '../../../shared/report/history.ts';

/** Everything that the sheets of an open job draw from, and how they write into it. */
export interface Desk {
  readonly open: OpenJob;
  /** Who changed the job elsewhere since it was drawn here; null when nobody did. */
  readonly changedBy: string | null;
  /** The surface that is looked at; null while the job has none. */
  readonly surface: JobSurface | null;
  /** Its surveys; null before the first. */
  readonly history: History | null;
  /** Who works. */
  readonly by: string;
  setBy(by: string): void;
  /** Writes changes down and draws the job anew; a refusal is shown and returned. */
  write(...changes: readonly AskedChange[]): Promise<SentError | null>;
  /** Shows a refusal, or draws the job anew where there is none. */
  settle(error: SentError | undefined): Promise<SentError | null>;
}

/** The surface to look at: the wanted one, or the one that was worked on last. */
export function surfaceOf({ job }: OpenJob, wanted: string | null): JobSurface | null {
  const chosen = wanted === null ? undefined : job.surfaces.get(wanted);
  const last = job.changes.findLast((change) => 'surface' in change);
  const surfaces = [...job.surfaces.values()];
  return chosen ?? (last && job.surfaces.get(last.surface)) ?? surfaces.at(-1) ?? null;
}

/** The surveys of one surface; null before the first. */
export function historyOf({ job, surveys }: OpenJob, surface: JobSurface | null): History | null {
  return historiesOf(job, surveys).find((each) => each.surface.name === surface?.name) ?? null;
}
