import type { Session } from '../../shared/session/fold.ts';
import { slopeOverMotion } from '../state/over-motion.ts';
import type { LineResult, SurveyResult } from '../state/survey-result.ts';
import { spanText } from './length.ts';
import { asWritten } from './quantity.ts';

/**
 * What the slope of a line says of the metal: "points up 24 µm over 300 mm", "leans 21 µm/m: top end high". Sizes
 * that are less than their own digits are said to be none.
 */
export function lineFault(session: Session, survey: SurveyResult, line: LineResult): string {
  const { setup } = session;
  const [first, last] = [line.stations[0], line.stations.at(-1)];
  const travelMm = (last?.xMm ?? 0) - (first?.xMm ?? 0);
  const slope = slopeOverMotion(survey.result, line.name, travelMm);
  const [riseUm, uUm] = [slope.perMm * travelMm, slope.u * travelMm];
  const writing = asWritten();
  const none = writing.isNone(riseUm, uUm);
  const over = `over ${spanText(travelMm, setup.lengthUnit)}`;
  const far = 'farEnd' in setup ? setup.farEnd : 'far end';
  const start = 'startEnd' in setup ? setup.startEnd : 'start end';
  switch (setup.kind) {
    case 'bar': {
      const way = line.name === 'top' ? ['up', 'down'] : ['to the indicator', 'away from the indicator'];
      if (none) return `runs true, ${writing.sureTo(uUm)} ${over}`;
      return `points ${riseUm > 0 ? way[0] : way[1]} ${writing.size(riseUm, uUm)} ${over}`;
    }
    case 'square': {
      const [perM, u] = [1000 * slope.perMm, 1000 * slope.u];
      if (writing.isNone(perM, u, 'µm/m')) return `stands square, ${writing.sureTo(u, 'µm/m')}`;
      return `leans ${writing.size(perM, u, 'µm/m')}: ${perM > 0 ? far : start} high`;
    }
    case 'dovetail':
      if (none) return `no taper, ${writing.sureTo(uUm)}`;
      return `tapers ${writing.size(riseUm, uUm)} ${over}: bigger at the ${riseUm > 0 ? far : start}`;
    default:
      if (none) return `no taper, ${writing.sureTo(uUm)}`;
      return `tapers ${writing.size(riseUm, uUm)} ${over}: ${riseUm > 0 ? far : start} high`;
  }
}
