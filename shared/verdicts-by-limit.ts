import type { AdjustedHeights } from './adjust/adjusted.ts';
import { WayscribeError } from './errors.ts';
import type { Figure, FigureUnit, Lines } from './figures/figure.ts';
import { straightness } from './figures/line-figures.ts';
import { bulgeOf, hollowOf } from './figures/one-sided.ts';
import type { ReferenceKind } from './figures/reference.ts';
import { type Judgement, judge, judgeOneSided } from './verdicts.ts';

/** A limit as the sheet gives it: µm, µm/m or µm/m per m, as the figure is. */
export interface Limit {
  readonly figure: string;
  readonly reference?: ReferenceKind | undefined;
  readonly max: number;
}

/** A limit with its verdict. `reference` is there where the figure is taken against one. */
export interface LimitVerdict extends Judgement {
  readonly figure: string;
  readonly reference?: ReferenceKind;
  readonly limit: number;
}

/** What limits may be about. */
export interface LimitedSurvey {
  readonly adjusted: AdjustedHeights;
  readonly lines: Lines;
  readonly figures: Readonly<Record<string, Figure>>;
  /** The reference line in use, for a limit that names none. */
  readonly lineReference: ReferenceKind;
  /** The reference plane in use. */
  readonly planeReference: ReferenceKind;
}

const unitWords: Readonly<Record<FigureUnit, string>> = {
  um: 'µm',
  'um/m': 'µm/m',
  'um/m per m': 'µm/m per m',
};

/**
 * Judges every limit. A limit may be set on any figure of the survey; on `flatness` with a reference; and for
 * each line on `<line>.straightness`, on `<line>.hollow` and on `<line>.crown`: how far it lies below or stands
 * above the line through its ends. "Convex only" is a limit of 0 on `<line>.hollow`.
 * Throws `sheet.invalid` for a figure that the survey does not have.
 */
export function verdictsOf(limits: readonly Limit[], survey: LimitedSurvey): LimitVerdict[] {
  return limits.map((limit, i) => {
    const [subject, kind] = split(limit.figure);
    const line = survey.lines[subject];
    if (line !== undefined && kind === 'straightness') {
      const reference = limit.reference ?? survey.lineReference;
      const { valueUm, uUm } = straightness(survey.adjusted, line, reference);
      return { figure: limit.figure, reference, limit: limit.max, ...judge(valueUm, uUm, limit.max) };
    }
    if (line !== undefined && (kind === 'hollow' || kind === 'crown')) {
      const { value, u } = (kind === 'hollow' ? hollowOf : bulgeOf)(survey.adjusted, line);
      return { figure: limit.figure, limit: limit.max, ...judgeOneSided(value, u, limit.max) };
    }
    const flatness = limit.figure === 'flatness' ? planeOf(limit, survey) : undefined;
    const figure = survey.figures[flatness === undefined ? limit.figure : `flatness.${flatness}`];
    if (figure === undefined) throw unknownFigure(limit.figure, i, survey);
    return {
      figure: limit.figure,
      ...(flatness && { reference: flatness }),
      limit: limit.max,
      ...judge(figure.value, figure.u, limit.max, unitWords[figure.unit]),
    };
  });
}

/** "front.straightness" into the line and the figure; a line's own name may hold points. */
function split(figure: string): [subject: string, kind: string] {
  const at = figure.lastIndexOf('.');
  return [figure.slice(0, Math.max(0, at)), figure.slice(at + 1)];
}

function planeOf(limit: Limit, survey: LimitedSurvey): ReferenceKind {
  const wished = limit.reference ?? survey.planeReference;
  return wished === 'ends' ? 'leastSquares' : wished;
}

function unknownFigure(figure: string, index: number, { lines, figures }: LimitedSurvey): WayscribeError {
  const known = [...Object.keys(lines).map((name) => `${name}.straightness`), ...Object.keys(figures)];
  return new WayscribeError(
    'sheet.invalid',
    `limits[${index}].figure`,
    `this survey has no figure "${figure}"`,
    known.length > 0 ? `name one of ${known.slice(0, 12).join(', ')}` : 'name lines first',
  );
}
