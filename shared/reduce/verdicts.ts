import { WayscribeError } from '../errors.ts';
import type { Figure } from '../figures/figure.ts';
import { bulgeOf, hollowOf } from '../figures/one-sided.ts';
import type { Result } from '../sheet/result.ts';
import type { Reference, Sheet } from '../sheet/schema.ts';
import { judge, judgeOneSided } from '../verdicts.ts';
import type { Surveyed } from './surveyed.ts';

type Limit = Sheet['limits'][number];
type Verdict = Result['verdicts'][number];

/**
 * The figures judged by the sheet's limits. Beside the figures of the kind, a limit may be set on
 * `<line>.straightness` and `flatness`, against the reference that it names or the one in use, and on
 * `<line>.hollow` and `<line>.bulge`: how far a line may lie below or above the one through its ends
 * ("convex only" is a hollow of at most 0).
 *
 * @throws WayscribeError `sheet.invalid` for a figure that this survey does not make.
 */
export function verdictsOf(
  sheet: Sheet,
  surveyed: Surveyed,
  lines: Result['lines'],
  figures: Readonly<Record<string, Figure>>,
): Verdict[] {
  return sheet.limits.map((limit, index) => {
    const line = limit.reference ?? surveyed.lineReference;
    const plane = limit.reference ?? surveyed.planeReference;
    return (
      oneSided(surveyed, limit) ??
      straightness(lines, limit, line) ??
      figure(figures, limit, limit.figure, undefined) ??
      figure(figures, limit, `${limit.figure}.${plane}`, plane) ??
      unknown(index, limit, lines, figures)
    );
  });
}

function straightness(lines: Result['lines'], limit: Limit, reference: Reference): Verdict | undefined {
  const line = lineNamed(lines, limit.figure, '.straightness');
  if (!line) return undefined;
  const { valueUm, uUm } = line.straightness[reference];
  return { figure: limit.figure, reference, limit: limit.max, ...judge(valueUm, uUm, limit.max) };
}

function figure(
  figures: Readonly<Record<string, Figure>>,
  limit: Limit,
  name: string,
  reference: Reference | undefined,
): Verdict | undefined {
  const found = Object.hasOwn(figures, name) ? figures[name] : undefined;
  if (!found) return undefined;
  const judgement = judge(found.value, found.u, limit.max, found.unit.replaceAll('um', 'µm'));
  return { figure: limit.figure, ...(reference && { reference }), limit: limit.max, ...judgement };
}

function oneSided({ heights, lines }: Surveyed, limit: Limit): Verdict | undefined {
  for (const [ending, of] of [['.hollow', hollowOf] as const, ['.bulge', bulgeOf] as const]) {
    const line = lineNamed(lines, limit.figure, ending);
    if (!line) continue;
    const { value, u } = of(heights, line);
    return {
      figure: limit.figure,
      reference: 'ends',
      limit: limit.max,
      ...judgeOneSided(value, u, limit.max),
    };
  }
  return undefined;
}

function lineNamed<T>(lines: Readonly<Record<string, T>>, figure: string, ending: string): T | undefined {
  const name = figure.endsWith(ending) ? figure.slice(0, -ending.length) : '';
  return Object.hasOwn(lines, name) ? lines[name] : undefined;
}

function unknown(
  index: number,
  { figure: name }: Limit,
  lines: Result['lines'],
  figures: Readonly<Record<string, Figure>>,
): never {
  const made = [...Object.keys(lines).map((line) => `${line}.straightness`), ...Object.keys(figures)];
  throw new WayscribeError(
    'sheet.invalid',
    `limits[${index}].figure`,
    `this survey makes no figure "${name}"`,
    `name one of ${made.join(', ')}`,
  );
}
