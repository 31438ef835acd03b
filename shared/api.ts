import { z } from 'zod';
import { heightUnits, tiltUnits } from './units.ts';

/** What the JSON API answers, beside the live stream of messages. */

/** GET /api/recordings: newest first. */
export const recordingListSchema = z.array(
  z.object({
    id: z.string(),
    t: z.number(),
    part: z.string(),
    surface: z.string(),
    round: z.string(),
    operator: z.string(),
    takes: z.number().int().describe('takes that count'),
    planned: z.number().int().describe('placements of the plan'),
    ended: z.boolean(),
    simulated: z.boolean(),
  }),
);
export type RecordingList = z.infer<typeof recordingListSchema>;

/** GET /api/ports: what an instrument could hang on, and the ways in which instruments talk. */
export const portListSchema = z.object({
  ports: z.array(
    z.object({
      path: z.string(),
      label: z.string().describe('maker and product as the adapter tells them, or the path'),
      serial: z.string().optional(),
    }),
  ),
  profiles: z.array(
    z.object({
      id: z.string(),
      title: z.string(),
      units: z
        .object({ tilt: z.enum(tiltUnits).optional(), height: z.enum(heightUnits).optional() })
        .describe('what it tells, and in which unit'),
    }),
  ),
});
export type PortList = z.infer<typeof portListSchema>;
