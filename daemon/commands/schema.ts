import { Argument, Command } from 'commander';
import type { z } from 'zod';

/** Where each schema stands; loaded only when it is asked for. */
const schemas: Record<string, () => Promise<z.ZodType>> = {
  sheet: async () => (await import('../../shared/sheet/sheet.ts')).sheetSchema,
  result: async () => (await import('../../shared/sheet/result.ts')).resultSchema,
  lesson: async () => (await import('../../shared/lesson/lesson.ts')).lessonSchema,
  settings: async () => (await import('../settings/settings.ts')).settingsSchema,
  published: async () => {
    const [{ z }, { publishedSchemas }] = await Promise.all([
      import('zod'),
      import('../publish/published.ts'),
    ]);
    return z.object(publishedSchemas).describe('what goes to the broker, by the last part of its topic');
  },
  recording: async () => {
    const [{ z }, { eventSchema, headerSchema }] = await Promise.all([
      import('zod'),
      import('../../shared/session/events.ts'),
    ]);
    return z.union([headerSchema, eventSchema]).describe('one line of a recording: the header, then events');
  },
};

/** `wayscribe schema`: the form of what goes in and comes out, as JSON Schema. */
export function schemaCommand(): Command {
  return new Command('schema')
    .description(
      'print the JSON Schema of a sheet, a result, a lesson, the settings, what is published, or a line of a recording',
    )
    .addArgument(new Argument('<what>', 'which form').choices(Object.keys(schemas)))
    .action(async (what: string) => {
      const { z } = await import('zod');
      console.log(JSON.stringify(z.toJSONSchema(await schemas[what]!(), { io: 'input' }), null, 2));
    });
}
