import { z } from 'zod';
import { languageCodes } from '../words/languages/languages.ts';

const kindSchema = z.enum([
  'way',
  'bed',
  'plate',
  'slide',
  'straightedge',
  'square',
  'bar',
  'dovetail',
  'repeat',
  'collars',
  'face',
]);

/** What this browser remembers of its person: how the page looks and sounds, and the last set-up of each kind. */
const preferencesSchema = z.object({
  theme: z.enum(['paper', 'slate']).optional(),
  muted: z.boolean().optional(),
  speech: z.boolean().optional(),
  by: z.string().optional(),
  language: z.enum(languageCodes).optional(),
  kind: kindSchema.optional(),
  forms: z.partialRecord(kindSchema, z.record(z.string(), z.string())).optional(),
});
export type Preferences = z.infer<typeof preferencesSchema>;

const key = 'wayscribe';

/** What was remembered; nothing when storage is closed or holds something else. */
export function recall(): Preferences {
  try {
    const parsed = preferencesSchema.safeParse(JSON.parse(localStorage.getItem(key) ?? '{}'));
    return parsed.success ? parsed.data : {};
  } catch {
    return {};
  }
}

/** Remembers; does nothing where the browser forbids it. */
export function remember(part: Preferences): void {
  try {
    localStorage.setItem(key, JSON.stringify({ ...recall(), ...part }));
  } catch {
    // Storage is closed or full: the page works without a memory.
  }
}
