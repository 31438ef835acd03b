import { say } from './say.ts';

const kinds: readonly [RegExp, string][] = [
  [/iPad|Tablet|Android(?!.*Mobile)/, 'A tablet'],
  [/iPhone|Mobile/, 'A phone'],
  [/Windows|Macintosh|Linux|CrOS/, 'A computer'],
];

/** What kind of device a browser says it runs on: enough to tell the tablet from the phone. */
export function deviceWords(userAgent: string): string {
  return say(kinds.find(([pattern]) => pattern.test(userAgent))?.[1] ?? 'A device');
}
