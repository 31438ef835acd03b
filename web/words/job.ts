import type { Measured } from '../../shared/job/before-after.ts';
import type { JobVerdict } from '../../shared/job/wire.ts';
import { figureOf, type History, limitOf, mainFigureName } from '../../shared/report/history.ts';
import { capital, metalSentences, sure } from '../../shared/report/words.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { dateText } from './quantity.ts';
import { say } from './say.ts';

/** The figure that a surface is about, with its limit and verdict. */
export interface MainFigure extends Measured {
  readonly name: string;
  readonly unit: string;
  readonly limit: number | null;
  readonly verdict: Result['verdicts'][number] | null;
}

export function mainFigure(history: History): MainFigure | null {
  const name = mainFigureName(history);
  const figure = name === null ? null : figureOf(history.newest.result, name);
  if (!figure || name === null) return null;
  const verdict = history.newest.result.verdicts.find((each) => each.figure === name) ?? null;
  return { ...figure, name, limit: limitOf(history, name), verdict };
}

/** One word and a little: how a figure stands to its limit. */
export function verdictText({ verdict, limit, unit }: MainFigure): string {
  if (limit === null) return say('no limit agreed');
  const values = { limit, unit };
  if (!verdict) return say('allowed {limit} {unit}, not judged', values);
  if (verdict.verdict === 'within') return say('within the allowed {limit} {unit}', values);
  if (verdict.verdict === 'outside') return say('outside the allowed {limit} {unit}', values);
  return say('cannot tell: allowed {limit} {unit}', values);
}

/** The largest words of a job: what the surface is like now. */
export function jobSentence(history: History | null, surface: string | null): string {
  if (surface === null) return say('Which surfaces does this job have?');
  if (!history) return say('{surface} was not measured yet', { surface: capital(surface) });
  return metalSentences(history.newest).join(' ');
}

/** "As left, 7 Mar 2026, sure to 0.4 µm." */
export function roundText(history: History): string {
  const { record } = history.newest;
  const figure = mainFigure(history);
  const round = capital(record.round);
  const day = dayText(record.at);
  if (!figure) return say('{round}, {day}.', { round, day });
  return say('{round}, {day}. Sure to {u} {unit}.', { round, day, u: sure(figure.u), unit: figure.unit });
}

export function dayText(at: string): string {
  return dateText(Date.parse(at));
}

/** What verifying came to, one sentence a line. */
export function verdictWords({ files, problems }: JobVerdict): string[] {
  if (problems.length === 0) {
    return [
      say('Every one of {count} files is as it was written.', { count: files.length }),
      say('No line was changed, removed, inserted or moved.'),
    ];
  }
  return problems.map(({ file, line, what }) =>
    line === undefined
      ? say('{file}: {what}.', { file: plain(file), what })
      : say('{file}, line {line}: {what}.', { file: plain(file), line, what }),
  );
}

function plain(file: string): string {
  return file.split('/').at(-1) ?? file;
}
