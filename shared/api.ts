import { z } from 'zod';
import { provedInstrumentSchema } from './proving/instruments.ts';
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
      identity: z
        .string()
        .optional()
        .describe('how an instrument on it is found again; its path when left out'),
      alike: z.boolean().optional().describe('another adapter is just like it: it is known by its socket'),
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

/** GET /api/instruments: what was proved, each instrument once, the newest first; and how one may be asked. */
export const instrumentListSchema = z.object({
  instruments: z.array(
    z.object({
      proved: provedInstrumentSchema,
      is: z.enum(['typed', 'found', 'tie', 'absent']).describe('whether its adapter is plugged in now'),
    }),
  ),
  asked: z.array(z.object({ id: z.string(), title: z.string() })).describe('profiles that speak when asked'),
});
export type InstrumentList = z.infer<typeof instrumentListSchema>;

/** GET /api/devices, on this computer only: devices in the network that may control. */
export const pairedDevicesSchema = z.array(
  z.object({ id: z.string(), name: z.string(), since: z.number().describe('ms since 1970') }),
);
export type PairedDevice = z.infer<typeof pairedDevicesSchema>[number];

/** POST /api/devices/invite, on this computer only: what one more device is to open, once. */
export const inviteSchema = z.object({
  invites: z
    .array(z.object({ url: z.string(), qr: z.string().describe('picture of the address, an SVG document') }))
    .describe(
      'one for each address that this computer has in a network; each works, the first one used counts',
    ),
  until: z.number().describe('ms since 1970'),
});
export type Invite = z.infer<typeof inviteSchema>;

/** POST /api/pair: the token of an invitation. */
export const pairSchema = z.strictObject({ token: z.string().min(16).max(100) });
