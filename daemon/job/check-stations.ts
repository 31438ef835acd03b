import { WayscribeError } from '../../shared/errors.ts';
import type { JobChange } from '../../shared/job/document.ts';
import { stationRuns } from '../../shared/job/station-runs.ts';
import { type JobInFolder, stationsOf } from './load.ts';

/**
 * Proves that passes and prints are on stations of the newest survey of their surface. Before the first survey, or
 * when it cannot be read, any name may do.
 * @throws WayscribeError `job.invalid`
 */
export async function checkStations(folder: JobInFolder, change: JobChange): Promise<void> {
  if (change.change !== 'passes' && change.change !== 'print') return;
  const lines = await stationsOf(folder, change.surface);
  if (!lines) return;
  const named = change.change === 'passes' ? change.passes.flat() : Object.keys(change.stations);
  const known = new Set(lines.flat());
  const unknown = named.find((name) => !known.has(name));
  if (unknown === undefined) return;
  throw new WayscribeError(
    'job.invalid',
    change.change === 'passes' ? 'passes' : 'stations',
    `"${change.surface}" has no station "${unknown}"`,
    `name some of ${stationRuns([...known], lines)}`,
  );
}
