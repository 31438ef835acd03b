import type { Closure } from '../../../shared/figures/closures.ts';
import { worstOf } from './plate-closures.ts';
import { coveredMm, type PlateSession } from './plate-session.ts';

/** A place on the plate in words: "far right corner", "near edge", "middle". */
export function placeInWords(session: PlateSession, name: string): string {
  const station = session.plan.stations.find((each) => each.name === name);
  if (!station) return '';
  const { xMm, yMm } = coveredMm(session);
  const [u, v] = [station.xMm / xMm, station.yMm / yMm];
  const side = (share: number, low: string, high: string, edge: number) =>
    share <= edge ? low : share >= 1 - edge ? high : '';
  const [across, along] = [side(v, 'near', 'far', 1e-6), side(u, 'left', 'right', 1e-6)];
  if (across && along) return `${across} ${along} corner`;
  if (across || along) return `${across || along} edge`;
  if (Math.abs(u - 0.5) < 0.17 && Math.abs(v - 0.5) < 0.17) return 'about the middle';
  return [side(v, 'near', 'far', 0.34), side(u, 'left', 'right', 0.34)].filter(Boolean).join(' ') || 'inside';
}

/** The stations to be named on the plan, the most important first: corners, where lines cross, of a grid only the worst. */
export function namedStations(
  session: PlateSession,
  closures: readonly Closure[],
): { readonly name: string; readonly words: string }[] {
  const { plan } = session;
  const corners = plan.stations
    .map(({ name }) => ({ name, words: placeInWords(session, name) }))
    .filter(({ words }) => words.endsWith('corner'))
    .map(({ name, words }) => ({ name, words: words.replace(' corner', '') }));
  const worst = worstOf(closures)?.station;
  const crossings = session.setup.pattern === 'grid' ? (worst ? [worst] : []) : ['C', 'NM', 'FM', 'LM', 'RM'];
  const isCorner = new Set(corners.map(({ name }) => name));
  return [
    ...corners,
    ...crossings.filter((name) => !isCorner.has(name)).map((name) => ({ name, words: '' })),
  ];
}
