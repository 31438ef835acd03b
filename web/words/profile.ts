import type { Session } from '../../shared/session/fold.ts';
import { referenceWord, side, stationSentence } from '../../shared/words.ts';
import type { LineResult, SurveyResult } from '../state/survey-result.ts';
import { kindWords } from './kinds.ts';
import { lineFault } from './line-fault.ts';
import { asWritten } from './quantity.ts';
import { biggerAndSmaller, highAndLow, type Sides } from './sides.ts';

/** What the heights of a kind are called. */
export function sidesOf({ setup }: Session): Sides {
  return setup.kind === 'dovetail' || setup.kind === 'collars' ? biggerAndSmaller : highAndLow;
}

/** What the heights of the profile are over. */
export function profileCaption(session: Session, survey: SurveyResult | null): string {
  const { setup } = session;
  const line = survey?.lines[0];
  const [first, last] = [line?.stations[0], line?.stations.at(-1)];
  const head = asWritten().head();
  const least = kindWords[setup.kind].overMotion ? 2 : 3;
  if (!survey || !line || !first || !last || line.stations.length < least) {
    return setup.kind === 'dovetail'
      ? `Size along the slide, ${head}: it shows from the second reading on.`
      : `Height along the ${kindWords[setup.kind].reads === 'tilt' ? 'way' : 'line'}, ${head}: the shape shows from the second reading on.`;
  }
  const shaded = 'Shaded: where it lies, 95 % sure.';
  if (setup.kind === 'dovetail') return `Size over the mean of all sizes, ${head}. ${shaded}`;
  if (setup.kind === 'collars') return `Diameter over the mean of all, ${head}. ${shaded}`;
  if (setup.kind === 'repeat') return `Reading over the mean of all, ${head}. ${shaded}`;
  if (setup.kind === 'slide') return `Height over the motion of the slide, ${head}. ${shaded}`;
  const own = turnedBoth(session) ? 'its own error taken out' : 'its own error still in it';
  if (setup.kind === 'square') return `Height over the blade, ${own}, ${head}. ${shaded}`;
  if (setup.kind === 'bar') return `Height of the bar over the motion, ${own}, ${head}. ${shaded}`;
  const over =
    survey.result.reference === 'ends'
      ? survey.lines.length > 1
        ? 'the line through the ends of each way'
        : `the line through ${first.name} and ${last.name}`
      : referenceWord(survey.result.reference);
  return `Height over ${over}, ${head}. ${shaded}`;
}

/** Whether what is turned over has been read in both positions. */
export function turnedBoth({ plan, counted }: Session): boolean {
  const read = new Set([...counted.values()].map(({ place }) => place.run));
  const positions = plan.runs.flatMap((run) =>
    run.reads === 'height' && run.artefact && read.has(run.id) ? [run.artefact.turned] : [],
  );
  return new Set(positions).size === 2;
}

/** What is written at a curve: which station stands how high or low, or what a straight line leans. */
export function calloutText(session: Session, survey: SurveyResult, line: LineResult): string | null {
  const { setup } = session;
  const { stations } = line;
  if (setup.kind === 'square' || setup.kind === 'bar')
    return stations.length < 2 ? null : lineFault(session, survey, line);
  const worst = stations.reduce((best, station) =>
    Math.abs(station.heightUm) > Math.abs(best.heightUm) ? station : best,
  );
  if (stations.length < (kindWords[setup.kind].overMotion ? 2 : 3)) return null;
  // One number of digits for the whole profile: a station on its own reference claims no more than the others.
  const uUm = Math.max(...stations.map((station) => station.uUm));
  if (setup.kind === 'dovetail' || setup.kind === 'collars') {
    const where = side(worst.heightUm, uUm, asWritten());
    if (where === 'level') return `all sizes alike, ${asWritten().sureTo(uUm)}`;
    return `at ${worst.name} ${asWritten().size(worst.heightUm, uUm)} ${where === 'HIGH' ? 'BIGGER' : 'SMALLER'}`;
  }
  return stationSentence(worst.name, worst.heightUm, uUm, asWritten());
}
