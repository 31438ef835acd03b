import { homedir, hostname } from 'node:os';
import { join } from 'node:path';
import { z } from 'zod';

const LAST_PORT = 65_535;

const path = z
  .string()
  .trim()
  .min(1, 'is empty')
  .max(4096)
  .transform((text) => text.replace(/^~(?=\/|$)/, homedir()));
const noSigns = z
  .string()
  .trim()
  .regex(/^[^#+\s]{1,120}$/, 'It has no spaces, no # and no +.');

/** Everything that can be set, each thing once: the file, the variables and the options are made from this. */
export const settingsShape = {
  folder: path.describe('folder of the recordings'),
  profiles: path.describe('folder of your own instrument profiles'),
  port: z
    .number(`It is a whole number from 0 to ${LAST_PORT}.`)
    .int(`It is a whole number from 0 to ${LAST_PORT}.`)
    .min(0, `It is a whole number from 0 to ${LAST_PORT}.`)
    .max(LAST_PORT, `It is a whole number from 0 to ${LAST_PORT}.`)
    .describe('port of the page on this computer; 0 takes a free one'),
  broker: z
    .url({ protocol: /^mqtts?$/, error: 'It is an address like mqtt://name:1883.' })
    .describe('MQTT broker that takes and results are published to'),
  topic: noSigns.describe('what the topics of everything published begin with'),
  bench: noSigns.regex(/^[^/]+$/, 'It has no /.').describe('name of this bench among those that publish'),
};

/** What the file of settings may hold. */
export const settingsSchema = z.strictObject(settingsShape).partial();
export type Settings = z.infer<typeof settingsSchema>;
export type SettingName = keyof Settings;
export const settingNames = Object.keys(settingsShape) as SettingName[];

/** What holds where nothing is set. What is not here has no default: it is off, or follows from another one. */
export const defaultSettings = {
  folder: join(homedir(), 'wayscribe'),
  port: 8383,
  topic: 'wayscribe',
  bench: hostname().replace(/[#+\s/]/g, '-') || 'bench',
} satisfies Settings;

/** What each value is called in the usage of a command. */
export const valueNames: Readonly<Record<SettingName, string>> = {
  folder: 'dir',
  profiles: 'dir',
  port: 'number',
  broker: 'address',
  topic: 'prefix',
  bench: 'name',
};

/** The environment variable that sets the same. */
export function variableOf(name: SettingName): string {
  return `WAYSCRIBE_${name.toUpperCase()}`;
}

/** A setting as it was typed, or in words why it is none. */
export function readSetting(name: SettingName, text: string): { value: unknown } | { wrong: string } {
  // Digits and nothing else: '' and '1e3' would be numbers too.
  const typed = name === 'port' && /^\d+$/.test(text) ? Number(text) : text;
  const parsed = settingsShape[name].safeParse(typed);
  return parsed.success ? { value: parsed.data } : { wrong: parsed.error.issues[0]!.message };
}
