import type { Session } from '../../shared/session/fold.ts';
import { slopeOverMotion } from '../state/over-motion.ts';
import type { LineResult, SurveyResult } from '../state/survey-result.ts';
import { spanText } from './length.ts';
import { asWritten } from './quantity.ts';
import { say } from './say.ts';

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
  const far = 'farEnd' in setup ? setup.farEnd : say('far end');
  const start = 'startEnd' in setup ? setup.startEnd : say('start end');
  const values = {
    size: writing.size(riseUm, uUm),
    sure: writing.sureTo(uUm),
    length: spanText(travelMm, setup.lengthUnit),
    end: riseUm > 0 ? far : start,
  };
  switch (setup.kind) {
    case 'bar':
      if (none) return say('runs true, {sure} over {length}', values);
      if (line.name === 'top') {
        return riseUm > 0
          ? say('points up {size} over {length}', values)
          : say('points down {size} over {length}', values);
      }
      return riseUm > 0
        ? say('points to the indicator {size} over {length}', values)
        : say('points away from the indicator {size} over {length}', values);
    case 'square': {
      const [perM, u] = [1000 * slope.perMm, 1000 * slope.u];
      if (writing.isNone(perM, u, 'µm/m'))
        return say('stands square, {sure}', { sure: writing.sureTo(u, 'µm/m') });
      return say('leans {size}: {end} high', {
        size: writing.size(perM, u, 'µm/m'),
        end: perM > 0 ? far : start,
      });
    }
    case 'dovetail':
    case 'collars':
      if (none) return say('no taper, {sure}', values);
      return say('tapers {size} over {length}: bigger at the {end}', values);
    default:
      if (none) return say('no taper, {sure}', values);
      return say('tapers {size} over {length}: {end} high', values);
  }
}
