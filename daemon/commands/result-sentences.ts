import type { LineFigures } from '../../shared/figures/line-figures.ts';
import type { Result } from '../../shared/sheet/result.ts';
import { type Reference, references } from '../../shared/sheet/sheet.ts';
import { amountSureTo, lineSentence, referenceWord, stationSentence } from '../../shared/words.ts';

/** A result in plain sentences, one a line. Uncertainties are said at about 95 %. */
export function resultSentences(result: Result, title?: string): string[] {
  // What a gauge reads from place to place has no line that it could be straight along.
  const rows = result.kind === 'repeat' ? [] : Object.entries(result.lines);
  const lines = rows.flatMap(([name, line]) => lineSentences(name, line, result.reference));
  const figures = Object.entries(result.figures).map(([name, { value, unit, u }]) => {
    return `${name}: ${signed(value)}${amountSureTo(value, u, unitWord(unit))}.`;
  });
  return [
    ...(title ? [title, ''] : []),
    ...lines,
    ...figures,
    ...result.verdicts.map(verdictSentence),
    ...suspectSentences(result),
    ...result.notes,
  ];
}

function lineSentences(name: string, line: Result['lines'][string], reference: Reference): string[] {
  return [
    `${lineSentence(name, line as LineFigures, reference)}.`,
    ...references.map((other) => {
      const { valueUm, uUm } = line.straightness[other];
      return `  Straightness against ${referenceWord(other)} ${amountSureTo(valueUm, uUm)}.`;
    }),
    `  Heights over ${referenceWord(reference)}:`,
    ...Object.entries(line.stations).map(([station, { heightUm, uUm }]) => {
      if (heightUm === 0 && uUm === 0) return `  ${station} lies on it.`;
      return `  ${stationSentence(station, heightUm, uUm)}.`;
    }),
  ];
}

function verdictSentence({ figure, limit, value, U, verdict, reason }: Result['verdicts'][number]): string {
  const word = verdict === 'cannot tell' ? 'whether it is within cannot be told' : `${verdict} the limit`;
  return `${figure} ${amountSureTo(value, U / 2)}, limit ${limit} µm: ${word}${reason ? ` (${reason})` : ''}.`;
}

function suspectSentences(result: Result): string[] {
  return result.readings
    .filter((reading) => reading.suspect)
    .map((reading) => {
      const where =
        'walk' in reading
          ? `${reading.walk} ${reading.from}–${reading.to}`
          : `${reading.sweep} at ${reading.at}`;
      return `The reading ${where} disagrees with its neighbours: read it again.`;
    });
}

function unitWord(unit: string): string {
  return unit.replace('um', 'µm');
}

function signed(value: number): string {
  return value < 0 ? '−' : '+';
}
