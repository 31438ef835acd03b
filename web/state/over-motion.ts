import type { Result } from '../../shared/sheet/result.ts';

interface Station {
  readonly name: string;
  readonly xMm: number;
  readonly heightUm: number;
  readonly uUm: number;
}

/** The least-squares slope of a line against the motion, µm/mm, and its standard uncertainty. */
export function slopeOverMotion(
  { figures }: Pick<Result, 'figures'>,
  line: string,
  travelMm: number,
): { perMm: number; u: number } {
  return slopeTold({ figures }, line, travelMm) ?? { perMm: 0, u: 0 };
}

/** The same; null where the readings tell no slope. */
export function slopeTold(
  { figures }: Pick<Result, 'figures'>,
  line: string,
  travelMm: number,
): { perMm: number; u: number } | null {
  const slope = figures[`${line}.slope`] ?? figures.squareness;
  if (slope) return { perMm: slope.value / 1000, u: slope.u / 1000 };
  const taper = figures[`${line}.taper`] ?? figures.taper;
  return taper && travelMm > 0 ? { perMm: taper.value / travelMm, u: taper.u / travelMm } : null;
}

/**
 * Heights of a line over the motion that carried the indicator, through their mean, from the heights over the
 * least-squares line: the slope is put back. Of equally good readings slope and rest are not correlated (least
 * squares), so that their variances add.
 */
export function overMotion<S extends Station>(result: Result, line: string, stations: readonly S[]): S[] {
  const [first, last] = [stations[0], stations.at(-1)];
  if (!first || !last) return [];
  const slope = slopeOverMotion(result, line, last.xMm - first.xMm);
  const middle = stations.reduce((sum, { xMm }) => sum + xMm, 0) / stations.length;
  return stations.map((station) => {
    const x = station.xMm - middle;
    return {
      ...station,
      heightUm: station.heightUm + slope.perMm * x,
      uUm: Math.hypot(station.uUm, slope.u * x),
    };
  });
}
