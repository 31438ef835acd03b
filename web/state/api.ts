import type { z } from 'zod';
import {
  type InstrumentList,
  instrumentListSchema,
  type PortList,
  portListSchema,
  type RecordingList,
  recordingListSchema,
} from '../../shared/api.ts';

/** Asks the daemon's JSON API, which lies beside the page; null when it doesn't answer as agreed. */
async function ask<T>(path: string, schema: z.ZodType<T>): Promise<T | null> {
  try {
    const response = await fetch(`api/${path}`);
    if (!response.ok) return null;
    const parsed = schema.safeParse(await response.json());
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

export const askRecordings = (): Promise<RecordingList | null> => ask('recordings', recordingListSchema);
export const askInstruments = (): Promise<InstrumentList | null> => ask('instruments', instrumentListSchema);
export const askPorts = (): Promise<PortList | null> => ask('ports', portListSchema);

/** Address of what can be taken home of a recording. */
export function exportPath(
  id: string,
  what: '' | '/sheet.json' | `/result.json?reference=${string}` | '/readings.csv',
): string {
  return `api/recordings/${encodeURIComponent(id)}${what}`;
}
