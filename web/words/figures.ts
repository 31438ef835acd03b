import type { Session } from '../../shared/session/fold.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { referenceWord } from '../../shared/words.ts';
import type { Reference } from '../state/page-state.ts';
import type { LineResult, SurveyResult } from '../state/survey-result.ts';
import { lineTitle } from './kinds.ts';
import { spanText } from './length.ts';
import { asWritten } from './quantity.ts';
import { say } from './say.ts';

/** One number that the survey comes to, as it is shown: a size without a sign, and in words which end or side. */
export interface ShownFigure {
  /** Its name in the result: `top.taper`. */
  readonly name: string;
  readonly title: string;
  readonly value: number;
  /** One standard deviation. */
  readonly u: number;
  readonly unit: string;
  /** Which end, side or corner, and against what. */
  readonly says: string;
}

/** Every figure of the survey, the one that matters most first. */
export function shownFigures(
  session: Session,
  survey: SurveyResult,
  reference: Reference,
): readonly ShownFigure[] {
  const { figures, kind } = survey.result;
  const shape = (line: LineResult) => straightness(session, line, reference);
  const named = Object.entries(figures).map(([name, figure]) => ofResult(session, survey, name, figure));
  switch (session.setup.kind) {
    case 'way':
    case 'straightedge':
      return survey.lines.map(shape);
    case 'bed':
      return kind === 'bed'
        ? [...sorted(named, ['wind', 'twist']), ...survey.lines.map(shape)]
        : survey.lines.map(shape);
    case 'plate':
      return kind === 'plate' ? sorted(named, [`flatness.${reference}`]) : survey.lines.map(shape);
    case 'slide':
      return survey.lines.flatMap((line) => [
        ...named.filter(({ name }) => name.startsWith(`${line.name}.`)),
        rest(session, line),
      ]);
    case 'dovetail':
      return [...named, ...survey.lines.map((line) => rest(session, line))];
    case 'square':
    case 'bar':
    case 'repeat':
    case 'collars':
    case 'face':
      return named;
  }
}

function sorted(figures: readonly ShownFigure[], first: readonly string[]): readonly ShownFigure[] {
  const rank = ({ name }: ShownFigure) => (first.includes(name) ? first.indexOf(name) : first.length);
  return figures.toSorted((a, b) => rank(a) - rank(b));
}

function straightness(session: Session, line: LineResult, reference: Reference): ShownFigure {
  const { valueUm, uUm, highest, lowest } = line.figures.straightness[reference];
  const [first, last] = [line.stations[0]?.name, line.stations.at(-1)?.name];
  const whole =
    session.plan.lines[line.name]?.length === line.stations.length &&
    Object.keys(session.plan.lines).length > 1;
  const over = reference === 'ends' ? `the line ${first} to ${last}` : referenceWord(reference);
  return {
    name: `${line.name}.straightness`,
    title: `${lineTitle(session.setup, line.name)}, out of straight`,
    value: valueUm,
    u: uUm,
    unit: 'µm',
    says:
      line.figures.shape === 'straight'
        ? `over ${over}`
        : `${highest} highest, ${lowest} lowest${whole && reference === 'ends' ? '' : `, over ${over}`}`,
  };
}

/** What a line is out of straight once its taper is taken off. */
function rest(session: Session, line: LineResult): ShownFigure {
  const { valueUm, uUm } = line.figures.straightness.leastSquares;
  const title =
    session.setup.kind === 'dovetail'
      ? 'Rest, taper taken off'
      : `${lineTitle(session.setup, line.name)}, rest`;
  return {
    name: `${line.name}.straightness`,
    title,
    value: valueUm,
    u: uUm,
    unit: 'µm',
    says: 'when the taper is taken off',
  };
}

function ofResult(
  session: Session,
  survey: SurveyResult,
  name: string,
  { value, u, unit }: Result['figures'][string],
): ShownFigure {
  const line = survey.lines.find((known) => name.startsWith(`${known.name}.`)) ?? survey.lines[0];
  const short = line && name.startsWith(`${line.name}.`) ? name.slice(line.name.length + 1) : name;
  const of =
    survey.lines.length > 1 && line && short !== name ? `${lineTitle(session.setup, line.name)}, ` : '';
  const figure = { name, value, u, unit: unit.replace('um', 'µm') };
  const writing = asWritten();
  const none = writing.isNone(value, u, figure.unit);
  const { setup } = session;
  const [start, far] = 'startEnd' in setup ? [setup.startEnd, setup.farEnd] : ['start', 'far end'];
  const end = value > 0 ? far : start;
  const title = (text: string) => (of ? of + text : text.charAt(0).toUpperCase() + text.slice(1));
  const travelMm = (line?.stations.at(-1)?.xMm ?? 0) - (line?.stations[0]?.xMm ?? 0);
  const inMetal = (perM: number) =>
    `${writing.size((perM * travelMm) / 1000, (u * travelMm) / 1000)} over ${spanText(travelMm, setup.lengthUnit)}`;
  switch (short) {
    case 'parallelism':
      return {
        ...figure,
        title: title(setup.kind === 'dovetail' ? 'sizes differ by' : 'out of parallel'),
        says: extremes(session, line),
      };
    case 'taper': {
      const more = setup.kind === 'dovetail' || setup.kind === 'collars' ? 'bigger' : 'high';
      return { ...figure, title: title('taper'), says: none ? 'none to speak of' : `${end} ${more}` };
    }
    case 'slope': {
      const way = line?.name === 'top' ? ['up', 'down'] : ['to the indicator', 'away from the indicator'];
      const says = none ? 'true' : `points ${value > 0 ? way[0] : way[1]}, ${inMetal(value)}`;
      return { ...figure, title: line ? lineTitle(setup, line.name) : 'Slope', says };
    }
    case 'squareness': {
      const seconds = 0.648 / Math.PI;
      return {
        ...figure,
        title: 'Out of square',
        says: `${none ? '' : `${end} high, `}${inMetal(value)}, ${writing.digits(value * seconds, u * seconds, '″')}″`,
      };
    }
    case 'wind': {
      const corner = survey.lines.at(-1)?.stations.at(-1)?.name ?? '';
      const where = none ? 'in the plane of the other three' : value > 0 ? 'HIGH' : 'LOW';
      return { ...figure, title: `Wind at corner ${corner}`, says: where };
    }
    case 'repeatReading':
      return { ...figure, title: say('Repeat reading'), says: highLow(survey) };
    case 'axisSlope':
      return {
        ...figure,
        title: say('Axis to travel'),
        says: none ? say('none to speak of') : say('away from the tool towards the {end}', { end }),
      };
    case 'hollow':
      return {
        ...figure,
        title: say('Hollow in the middle'),
        says: none ? say('none to speak of') : value > 0 ? say('middle LOW') : say('middle HIGH'),
      };
    case 'crossSlideSquareness':
      return { ...figure, title: say('Cross slide to axis'), says: say('out of square') };
    case 'twist':
      return { ...figure, title: 'Twist, one end to the other', says: 'most less least cross slope' };
    case 'twistRate':
      return { ...figure, title: 'Twist for each metre', says: none ? 'none to speak of' : '' };
    case 'flatness.leastSquares':
      return { ...figure, title: 'Flatness, least squares', says: highLow(survey) };
    case 'flatness.minimumZone':
      return { ...figure, title: 'Flatness, minimum zone', says: 'the narrowest' };
    default:
      return { ...figure, title: title(short), says: '' };
  }
}

function extremes({ setup }: Session, line: LineResult | undefined): string {
  if (!line || line.stations.length === 0) return '';
  const high = line.stations.reduce((a, b) => (b.heightUm > a.heightUm ? b : a));
  const low = line.stations.reduce((a, b) => (b.heightUm < a.heightUm ? b : a));
  return setup.kind === 'dovetail'
    ? `${high.name} biggest, ${low.name} smallest`
    : `${high.name} highest, ${low.name} lowest`;
}

function highLow({ result }: SurveyResult): string {
  const all = Object.entries(result.stations);
  if (all.length === 0) return '';
  const high = all.reduce((a, b) => (b[1].heightUm > a[1].heightUm ? b : a));
  const low = all.reduce((a, b) => (b[1].heightUm < a[1].heightUm ? b : a));
  return `${high[0]} highest, ${low[0]} lowest`;
}

/** "sure to 0.8 µm" of a figure. */
export function sureOf({ u, unit }: ShownFigure): string {
  return asWritten().sureTo(u, unit);
}
