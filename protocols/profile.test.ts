import { expect, test } from 'vitest';
import { z } from 'zod';
import { profileSchema } from './profile.ts';

type Schema = { [key: string]: unknown; description?: string; const?: unknown };

/** Every property of every object in a JSON Schema, with its path. */
function propertiesOf(schema: unknown, path: string): [string, Schema][] {
  if (typeof schema !== 'object' || schema === null) return [];
  return Object.entries(schema).flatMap(([key, value]) => {
    if (key !== 'properties') return propertiesOf(value, path);
    return Object.entries(value as Record<string, Schema>).flatMap(([name, property]): [string, Schema][] => {
      const inner = path ? `${path}.${name}` : name;
      return [[inner, property], ...propertiesOf(property, inner)];
    });
  });
}

test('every field of a profile is described', () => {
  const fields = propertiesOf(z.toJSONSchema(profileSchema, { io: 'input' }), '');
  expect(fields.length).toBeGreaterThan(60);
  const bare = fields.filter(([, { description }]) => !description).map(([path]) => path);
  expect([...new Set(bare)]).toEqual([]);
});
