import type { LineFigures } from '../figures/line-figures.ts';
import type { Measured } from '../job/before-after.ts';
import type { ChangeOf } from '../job/document.ts';
import { type Job, type JobSurface, recheckBecauseOf } from '../job/job.ts';
import type { JobSurvey } from '../job/survey.ts';
import { twoDigits } from '../proving/spread.ts';
import { amount, expanded, lineSentence, referenceWord, sureTo } from '../words.ts';
import { figureOf, figureWords, type History, mainFigureName } from './history.ts';

/** What a report says in sentences. */

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The day of a moment, UTC, as it is written in the document: 2026-03-02. */
export function dayOf(at: string): string {
  return at.slice(0, 10);
}

/** Expanded uncertainty with as many digits as it deserves, for a table or a drawing; a dash where it is not known. */
export function sure(u: number): string {
  return expanded(u) ?? '—';
}

/** A value with sign words left to the reader: its size and digits as its doubt allows; a minus where it has one. */
export function sized({ value, u }: Measured): string {
  const size = amount(value, u);
  return value < 0 && Number(size) !== 0 ? `−${size}` : size;
}

/** That a survey of the job cannot be read, and why. */
export function unreadableSentence({ surface, round, file }: ChangeOf<'survey'>, problem: string): string {
  return `${capital(surface)} ${round} can’t be read, and nothing here rests on it: ${file}: ${problem}.`;
}

/** The metal in words, as one survey found it. */
export function metalSentences({ result }: JobSurvey): string[] {
  if (result.kind === 'way' || result.kind === 'bed') {
    return Object.entries(result.lines).map(
      ([name, line]) => `${capital(lineSentence(name, line as LineFigures, result.reference))}.`,
    );
  }
  const flatness = figureOf(result, 'flatness');
  if (flatness) return [`${amount(flatness.value, flatness.u)} µm out of flat, ${sureTo(flatness.u)}.`];
  return Object.entries(result.figures).map(
    ([name, { value, u, unit }]) =>
      `${capital(figureWords(name))} ${sized({ value, u })} ${unit.replaceAll('um', 'µm')}, ${sureTo(u, unit.replaceAll('um', 'µm'))}.`,
  );
}

/** What is judged, in words: "within the agreed 10 µm". */
export function verdictSentences({ result }: JobSurvey): string[] {
  return result.verdicts.map(({ figure, limit, verdict, reason }) => {
    const unit = figureOf(result, figure)?.unit ?? 'µm';
    const words = {
      within: `within the allowed ${limit} ${unit}`,
      outside: `outside the allowed ${limit} ${unit}`,
      'cannot tell': `whether it is within the allowed ${limit} ${unit} cannot be told`,
    }[verdict];
    return `${capital(figureWords(figure))}: ${words}${reason ? ` (${reason})` : ''}.`;
  });
}

/** One or two sentences on a surface for the first page. */
export function surfaceSentence(job: Job, history: History): string {
  const { surface, first, newest, surveys } = history;
  const name = mainFigureName(history);
  const was = name === null ? null : figureOf(first.result, name);
  const is = name === null ? null : figureOf(newest.result, name);
  const unit = (is ?? was)?.unit ?? 'µm';
  const figures =
    was && is && surveys.length > 1
      ? `${figureWords(name!)} was ${sized(was)} ${unit} ${first.record.round} and is ${sized(is)} ${unit} ${newest.record.round}, ${sureTo(is.u, unit)}`
      : metalSentences(newest).join(' ').replace(/\.$/, '');
  const recheck = recheckBecauseOf(job, surface.name);
  return [
    `${capital(figures)}.`,
    ...judged(newest, was && is && surveys.length > 1 ? name : null),
    surface.passesSince.length > 0 &&
      `▲ ${passesSince(surface)} scraped since: it is another surface now, so measure it again.`,
    recheck.length > 0 && `▲ Check it again: ${recheck.join(', ')} was scraped after this was last measured.`,
  ]
    .filter((part) => part !== false)
    .join(' ');
}

/** "3 passes were". */
export function passesSince({ passesSince: { length } }: Pick<JobSurface, 'passesSince'>): string {
  return length === 1 ? '1 pass was' : `${length} passes were`;
}

/** One verdict needs no name when it is about the figure that was just named. */
function judged(survey: JobSurvey, named: string | null): string[] {
  const sentences = verdictSentences(survey);
  const [only, ...others] = survey.result.verdicts;
  const straightness = survey.result.kind === 'way' && only?.figure.endsWith('.straightness');
  if (others.length > 0 || !only || !(only.figure === named || straightness)) return sentences;
  return sentences.map((sentence) =>
    sentence.replace(/^[^:]*: /, 'It is ').replace(/^It is whether it is/, 'Whether it is'),
  );
}

/** What heights are over, in words. */
export function overWhat(survey: JobSurvey): string {
  const { kind, reference } = survey.result;
  if (kind === 'slide' || kind === 'square' || kind === 'bar') return 'the motion through the first station';
  if (kind === 'dovetail') return 'the size at the first station';
  if (kind === 'plate' || kind === 'network')
    return `the ${reference === 'minimumZone' ? 'minimum-zone' : 'least-squares'} plane`;
  return referenceWord(reference);
}

/** What was done and with what, in one line. */
export function methodOf({ session, sheet }: JobSurvey): string {
  if (!session) return `sheet of ${sheet.walks.length > 0 ? 'level walks' : 'indicator sweeps'}, brought in`;
  const { walks, sweeps } = sheet;
  const turned =
    walks.some(({ facing }) => facing !== walks[0]!.facing) || sweeps.some(({ turned: over }) => over);
  const what =
    walks.length > 0
      ? `level, ${walks.length} walk${walks.length === 1 ? '' : 's'}`
      : `indicator, ${sweeps.length} sweep${sweeps.length === 1 ? '' : 's'}`;
  return `${what}${turned ? ', turned' : ''}`;
}

/** The instrument with its proving. */
export function instrumentOf({ session }: JobSurvey): string {
  if (!session) return 'not on record';
  const { name, serial, provedOn, sigma, unit, graduation } = session.setup.instrument;
  const counts = graduation === 1 ? unit : `graduations of ${graduation} ${unit}`;
  const spread = sigma === undefined ? 'spread not proved' : `spread ${twoDigits(sigma)} ${counts}`;
  return `${name}${serial ? `, no. ${serial}` : ''}; ${provedOn ? `proved ${provedOn}` : 'not proved'}, ${spread.replaceAll('um', 'µm')}`;
}
