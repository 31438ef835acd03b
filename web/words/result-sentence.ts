import { uncheckedRedundancy } from '../../shared/adjust/suspect.ts';
import type { LineFigures } from '../../shared/figures/line-figures.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { lineSentence } from '../../shared/words.ts';
import type { Reference } from '../state/page-state.ts';
import type { LineResult, SurveyResult } from '../state/survey-result.ts';
import { kindWords } from '../words/kinds.ts';
import { shownFigures } from './figures.ts';
import { capital, lineTitle } from './kinds.ts';
import { lineFault } from './line-fault.ts';
import { surveyNotices, suspectOf } from './notices.ts';
import { turnedBoth } from './profile.ts';
import { asWritten } from './quantity.ts';
import { say } from './say.ts';
import type { Sentence } from './sentence.ts';

/** What the metal is like, and one line on how well that is known. */
export function resultSentence(
  session: Session,
  survey: SurveyResult | null,
  reference: Reference,
): Sentence {
  const surface = capital(session.setup.surface);
  if (session.counted.size === 0) {
    return { what: `${surface}: nothing was read`, context: 'There is no result without a reading.' };
  }
  if (!survey || survey.lines.length === 0) {
    const [told] = surveyNotices(session, survey).filter(({ warns }) => warns);
    return {
      what: `${surface}: too little was read`,
      context: told?.text ?? 'What was read does not hang together. Go on with it, or read it again.',
    };
  }
  return {
    what: `${metalSentence(session, survey, reference)}.`,
    context: [
      readingsText(session, survey),
      partText(session, survey),
      verdictText(survey.result),
      limitsOf(session),
    ]
      .filter(Boolean)
      .join(' '),
  };
}

function metalSentence(session: Session, survey: SurveyResult, reference: Reference): string {
  const { setup } = session;
  const { kind, figures } = survey.result;
  const writing = asWritten();
  const title = (line: LineResult) => lineTitle(setup, line.name);
  const shape = (line: LineResult) =>
    lineSentence(title(line), line.figures as LineFigures, reference, writing);
  const worst = survey.lines.reduce((a, b) =>
    b.figures.straightness[reference].valueUm > a.figures.straightness[reference].valueUm ? b : a,
  );
  switch (setup.kind) {
    case 'slide':
      if (survey.lines.length === 1) return `${title(worst)} ${lineFault(session, survey, worst)}`;
      return survey.lines
        .map((line) => `${capital(line.name)} ${taperWords(session, survey, line)}`)
        .join('. ');
    case 'bar':
      return `Bar ${survey.lines.map((line) => lineFault(session, survey, line)).join(', and ')}`;
    case 'square':
      return `${capital(setup.surface)} ${lineFault(session, survey, worst)}`;
    case 'dovetail': {
      const [sizes] = shownFigures(session, survey, reference);
      if (!sizes) return capital(setup.surface);
      return `${capital(setup.surface)}: sizes differ by ${writing.size(sizes.value, sizes.u)}, ${sizes.says}`;
    }
    case 'repeat': {
      const [repeat] = shownFigures(session, survey, reference);
      if (!repeat) return capital(setup.surface);
      const values = { surface: capital(setup.surface), size: writing.size(repeat.value, repeat.u) };
      return say('{surface}: readings repeat within {size}', values);
    }
    case 'collars':
      return say('{surface} {fault}', {
        surface: capital(setup.surface),
        fault: lineFault(session, survey, worst),
      });
    case 'face': {
      const hollow = figures.hollow;
      if (!hollow) return shape(worst);
      const values = { surface: capital(setup.surface), size: writing.size(hollow.value, hollow.u) };
      if (writing.isNone(hollow.value, hollow.u)) {
        return say('{surface}: neither hollow nor proud, {sure}', {
          ...values,
          sure: writing.sureTo(hollow.u),
        });
      }
      return hollow.value > 0
        ? say('{surface}: {size} hollow in the middle', values)
        : say('{surface}: {size} proud in the middle', values);
    }
    case 'bed': {
      const wind = figures.wind;
      if (kind !== 'bed' || !wind) return shape(worst);
      const corner = survey.lines.at(-1)?.stations.at(-1)?.name;
      const none = writing.isNone(wind.value, wind.u);
      const words = none
        ? `No wind, ${writing.sureTo(wind.u)}`
        : `In wind: ${corner} stands ${writing.size(wind.value, wind.u)} ${wind.value > 0 ? 'HIGH' : 'LOW'}`;
      return `${words}. ${shape(worst)}`;
    }
    case 'plate': {
      if (kind !== 'plate') return shape(worst);
      const [flatness] = shownFigures(session, survey, reference);
      if (!flatness) return shape(worst);
      return `${capital(setup.surface)} ${writing.size(flatness.value, flatness.u)} out of flat: ${flatnessEnds(survey)}`;
    }
    default:
      return shape(worst);
  }
}

/** "tapers 8.4 µm, right end high": short enough for two faces in one sentence. */
function taperWords(session: Session, survey: SurveyResult, line: LineResult): string {
  return lineFault(session, survey, line).replace(/ over [^:]*:/, ',');
}

function flatnessEnds({ result }: SurveyResult): string {
  const all = Object.entries(result.stations);
  const first = all[0];
  if (!first) return '';
  const high = all.reduce((a, b) => (b[1].heightUm > a[1].heightUm ? b : a), first);
  const low = all.reduce((a, b) => (b[1].heightUm < a[1].heightUm ? b : a), first);
  return `${high[0]} highest, ${low[0]} lowest`;
}

function readingsText(session: Session, survey: SurveyResult): string {
  const { fit } = survey.result;
  const unchecked = survey.result.readings.filter(
    ({ redundancy }) => redundancy < uncheckedRedundancy,
  ).length;
  const spare =
    fit.degreesOfFreedom === 0
      ? [say('nothing checks them')]
      : [
          say('{count} to spare', { count: fit.degreesOfFreedom }),
          suspectOf(survey) ? say('one of them disagrees') : say('none of them disagrees'),
          ...(unchecked > 0 ? [say('but nothing checks {count} of them', { count: unchecked })] : []),
        ];
  const readings = `${session.counted.size} readings, ${spare.join(', ')}.`;
  if (session.setup.kind !== 'way') return capital(readings);
  const walked = new Set([...session.counted.values()].map(({ place }) => place.run));
  return `${walked.size > 1 ? 'Out and back' : 'One way only'}: ${readings}`;
}

/** A result for a part of the surface must say so: the rest may be anything. */
function partText({ plan }: Session, { lines }: SurveyResult): string {
  const known = new Set(lines.flatMap(({ stations }) => stations.map(({ name }) => name)));
  if (known.size === plan.stations.length) return '';
  const [first, last] = [plan.stations, plan.stations.toReversed()].map((all) =>
    all.find(({ name }) => known.has(name)),
  );
  return `Only ${first?.name} to ${last?.name}: ${known.size} of ${plan.stations.length} stations.`;
}

/** What the figures of a kind cannot tell, or what is still in them. */
function limitsOf(session: Session): string {
  const { setup } = session;
  if (setup.kind === 'repeat') return say('How flat the whole plate is, this cannot tell.');
  if (setup.kind === 'dovetail') return 'Sizes cannot say which flank is at fault.';
  const { turn } = kindWords[setup.kind];
  if (!turn) return '';
  return !turnedBoth(session) ? 'It was not turned, so its own error is still in these figures.' : '';
}

/** "Limit 10 µm: within." Of several lines: "Limit 15 µm: front outside; rear within." One limit holds for all. */
function verdictText({ verdicts }: Result): string {
  const said = {
    within: 'within',
    outside: 'outside',
    'cannot tell': 'cannot tell, the doubt straddles it',
  } as const;
  const [first] = verdicts;
  if (!first) return '';
  const unit = /slope|squareness|twist/.test(first.figure) ? 'µm/m' : 'µm';
  const each = verdicts.map(({ figure, verdict }) =>
    verdicts.length > 1 ? `${figure.split('.')[0]} ${said[verdict]}` : said[verdict],
  );
  return `Limit ${asWritten().exact(first.limit, unit)}: ${each.join('; ')}.`;
}
