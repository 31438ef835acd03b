import type { z } from 'zod';
import { WayscribeError } from '../errors.ts';

/** The first thing wrong with the form of a sheet, in plain words and with its place. */
export function explainIssue(issue: z.core.$ZodIssue): WayscribeError {
  const [message, remedy] = words(issue);
  return new WayscribeError('sheet.invalid', placeOf(issue.path), message, remedy);
}

/** `['walks', 0, 'readings', 3]` as `walks[0].readings[3]`. */
export function placeOf(path: readonly PropertyKey[]): string {
  return path
    .map((part, index) =>
      typeof part === 'number' ? `[${part}]` : index === 0 ? String(part) : `.${String(part)}`,
    )
    .join('')
    .replaceAll(/\p{Cc}/gu, '?');
}

function words(issue: z.core.$ZodIssue): [message: string, remedy: string] {
  switch (issue.code) {
    case 'unrecognized_keys':
      return [`${shown(issue.keys[0])} is not a field here`, 'take it out or mend its spelling'];
    case 'invalid_value':
      return [`${shown(issue.input)} is not possible here`, `write ${issue.values.map(shown).join(' or ')}`];
    case 'too_small':
    case 'too_big':
      return issue.origin === 'array'
        ? tooMany(issue)
        : [`${shown(issue.input)} is out of range`, bound(issue)];
    case 'invalid_key':
    case 'invalid_format':
      return ['this name is not possible', 'a name has 1 to 80 characters, none of them a line break or tab'];
    case 'invalid_type':
      return issue.input === undefined
        ? ['this is missing', `write ${expected[issue.expected] ?? issue.expected}`]
        : [
            `${shown(issue.input)} is not possible here`,
            `write ${expected[issue.expected] ?? issue.expected}`,
          ];
    default:
      return [issue.message, ''];
  }
}

const expected: Record<string, string> = {
  number: 'a finite number',
  int: 'a whole number',
  string: 'a text',
  boolean: 'true or false',
  object: 'an object { … }',
  record: 'an object { … }',
  array: 'a list [ … ]',
  tuple: 'a list [ … ]',
};

type SizeIssue = z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig;

function tooMany(issue: SizeIssue): [string, string] {
  const length = Array.isArray(issue.input) ? issue.input.length : 0;
  return [`this list has ${length} entries`, `write ${limit(issue)} entries`];
}

function bound(issue: SizeIssue): string {
  return issue.origin === 'string' ? `write a text of ${limit(issue)} characters` : `write ${limit(issue)}`;
}

function limit(issue: SizeIssue): string {
  if (issue.exact) return String(issue.code === 'too_small' ? issue.minimum : issue.maximum);
  if (issue.code === 'too_small') return `${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`;
  return `${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}`;
}

function shown(value: unknown): string {
  if (typeof value === 'number') return String(value);
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}
