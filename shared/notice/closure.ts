import { type ClosureLine, closuresOf } from '../figures/closures.ts';
import type { Session } from '../session/fold.ts';
import type { Result } from '../sheet/result.ts';
import { placeWords, steps } from '../survey/plan.ts';
import { amount } from '../words.ts';
import type { Notice } from './notice.ts';
import { type Fitted, placeOf, sigmaOf } from './reading.ts';

/** A closure beyond so many of its standard uncertainties fails (two-sided 0.1 %). */
const fails = 3.29;

/** The crossing of a plate's lines that closes worst, and the line to repeat. */
export function closure(session: Session, result: Result | null): Notice[] {
  const { setup } = session;
  if (!result || setup.kind !== 'plate') return [];
  const lines = closureLines(session, result);
  const closures = closuresOf(lines, setup.zero);
  const [worst] = closures.toSorted((a, b) => b.closureUm / b.uUm - a.closureUm / a.uUm);
  if (!worst || !(worst.closureUm > fails * worst.uUm)) return [];
  const line = lines
    .filter(({ name }) => worst.lines.includes(name))
    .reduce((a, b) => (misfit(b) > misfit(a) ? b : a));
  const run = session.plan.runs.find((one) => one.line === line.name)!;
  const place = { run: run.id, at: steps(line.stations)[0]! };
  return [
    {
      code: 'closure',
      text: `At ${worst.station} the lines miss each other by ${amount(worst.closureUm, worst.uUm)} µm, where ${amount(2 * worst.uUm, worst.uUm)} µm would be usual. "${line.name}" fits worst: repeat it. If another fails then, the temperature is moving.`,
      place,
      warns: true,
    },
  ];
}

/** Lines walked from end to end, with how far each of their steps disagrees with the joint heights. */
function closureLines(session: Session, result: Result): ClosureLine[] {
  const { plan } = session;
  const at = new Map(plan.stations.map((station) => [station.name, station]));
  const sigma = sigmaOf(session, result);
  const lineOf = new Map(plan.runs.map((run) => [run.id, run]));
  return Object.entries(plan.lines).flatMap(([name, stations]) => {
    const own = result.readings.filter((reading) => lineOf.get(placeOf(reading).run)?.line === name);
    const counts: number[] = [];
    const excessUm = steps(stations).map((feet) => {
      const mine = own.filter((reading) => placeWords(placeOf(reading)) === placeWords({ at: feet }));
      counts.push(mine.length);
      const [a, b] = feet.map((foot) => at.get(foot)!);
      const baseMm = Math.hypot(b!.xMm - a!.xMm, b!.yMm - a!.yMm);
      return mine.reduce((sum, reading) => sum + (slopeExcess(reading) * baseMm) / 1000, 0) / mine.length;
    });
    const fewest = Math.min(...counts);
    if (fewest === 0) return [];
    const [a, b] = [at.get(stations[0]!)!, at.get(stations[1]!)!];
    const stepMm = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
    return [{ name, stations, excessUm, stepUUm: (sigma * stepMm) / 1000 / Math.sqrt(fewest) }];
  });

  function slopeExcess(reading: Fitted): number {
    const run = lineOf.get(placeOf(reading).run)!;
    return run.reads === 'tilt' ? -run.facing * reading.residual : 0;
  }
}

function misfit({ excessUm }: ClosureLine): number {
  return excessUm.reduce((sum, excess) => sum + excess ** 2, 0) / excessUm.length;
}
