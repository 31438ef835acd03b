import type { Session } from '../session/fold.ts';
import type { Setup } from '../session/setup.ts';
import type { Plan } from '../survey/plan.ts';
import { lengthOf } from './drift.ts';
import type { Notice } from './notice.ts';
import { lengthWords } from './reading.ts';

/** Steps that differ from the foot spacing by less than this are equal for every purpose. */
const sameStep = 0.01;

/**
 * Steps × spacing against the measured length. A station too many or too few, or another foot spacing than was said,
 * leaves the shape looking right and makes every height wrong: only the length tells.
 */
export function measuredLength({ setup, plan }: Session): Notice[] {
  if (setup.kind !== 'way' && setup.kind !== 'bed') return [];
  const walkedMm = lengthOf(plan, Object.keys(plan.lines)[0]!);
  const offMm = walkedMm - setup.lengthMm;
  if (Math.abs(offMm) < setup.baseMm / 2) return [];
  const words = (mm: number) => lengthWords(mm, setup);
  const steps = `${setup.stations - 1} steps of ${words(setup.baseMm)} are ${words(walkedMm)}`;
  return [
    {
      code: 'measured-length',
      text: `${steps}, and ${words(setup.lengthMm)} were measured. Count the stations and measure the foot spacing: a wrong spacing makes every height wrong by as much.`,
      warns: true,
    },
  ];
}

/** Lines whose steps are not as long as the feet of the level stand apart. */
export function footSpacing({ setup, plan }: Session): Notice[] {
  if (setup.kind !== 'plate') return [];
  const groups = new Map<number, { lines: string[]; baseMm: number }>();
  for (const line of Object.keys(plan.lines)) {
    const stepMm = stepOf(plan, line);
    const baseMm = baseOf(setup, line);
    if (Math.abs(stepMm - baseMm) <= sameStep * baseMm) continue;
    const group = groups.get(stepMm) ?? { lines: [], baseMm };
    group.lines.push(line);
    groups.set(stepMm, group);
  }
  return [...groups].map(([stepMm, { lines, baseMm }]) => {
    const words = (mm: number) => lengthWords(mm, setup);
    const where =
      lines.length > 2 ? `${lines.slice(0, 2).join(', ')} and ${lines.length - 2} more` : lines.join(' and ');
    const what =
      stepMm > baseMm
        ? `no foot stands on ${words(stepMm - baseMm)} of every step`
        : `the steps overlap by ${words(baseMm - stepMm)}; with feet longer than the step they can't stand on its marks`;
    return {
      code: 'foot-spacing' as const,
      text: `${where}: the steps are ${words(stepMm)} and the feet stand ${words(baseMm)} apart, so ${what}. Set the feet to ${words(stepMm)} for these lines, or choose another foot spacing.`,
      warns: true,
    };
  });
}

function stepOf(plan: Plan, line: string): number {
  return lengthOf(plan, line) / (plan.lines[line]!.length - 1);
}

function baseOf(setup: Extract<Setup, { kind: 'plate' }>, line: string): number {
  return line.endsWith('diagonal') ? (setup.diagonalBaseMm ?? setup.baseMm) : setup.baseMm;
}
