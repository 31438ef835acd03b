import type { Session } from '../../../shared/session/fold.ts';
import type { SetupOf } from '../../../shared/session/setup.ts';
import type { Placement, PlannedStation } from '../../../shared/survey/plan.ts';
import type { Across } from '../across.ts';

export type BedSession = Session & { readonly setup: SetupOf<'bed'> };

/** Heights of the rows of the ladder, px from its top; the ways are given by their middles. */
export interface LadderRows {
  readonly rearLabelPx: number;
  readonly rearPx: number;
  readonly frontPx: number;
  readonly frontLabelPx: number;
  readonly stepPx: number;
  readonly totalPx: number;
  readonly heightPx: number;
  /** False where the ways stand closer or further apart on the page than their gauge to scale. */
  readonly gaugeToScale: boolean;
}

/** Breadth of a way in plan; it stands for any shape of way. */
export const wayPx = 18;
/** Breadth of the level in plan, wider than the way so that it is seen on it. */
export const levelPx = 26;

const leastGaugePx = 72;
const mostGaugePx = 80;

/** @param topPx room for words above the rear way */
export function ladderRows(across: Across, gaugeMm: number, topPx: number): LadderRows {
  const toScale = gaugeMm * across.pxPerMm;
  const gaugePx = Math.min(Math.max(toScale, leastGaugePx), mostGaugePx);
  const rearLabelPx = topPx + 12;
  const rearPx = rearLabelPx + 8 + levelPx / 2;
  const frontPx = rearPx + gaugePx;
  const frontLabelPx = frontPx + levelPx / 2 + 16;
  const stepPx = frontLabelPx + 22;
  return {
    rearLabelPx,
    rearPx,
    frontPx,
    frontLabelPx,
    stepPx,
    totalPx: stepPx + 18,
    heightPx: stepPx + 25,
    gaugeToScale: Math.abs(gaugePx - toScale) < 0.5,
  };
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

/** Where a station is drawn in the ladder. */
export function placer(across: Across, rows: LadderRows, stations: readonly PlannedStation[]) {
  const points = new Map(
    stations.map(({ name, xMm, yMm }): [string, Point] => [
      name,
      { x: across.px(xMm), y: yMm > 0 ? rows.rearPx : rows.frontPx },
    ]),
  );
  const nowhere: Point = { x: across.px(0), y: rows.frontPx };
  return (name: string): Point => points.get(name) ?? nowhere;
}

/** The two feet of a placement; of an indicator, its tip twice. */
export function feetOf({ at }: Placement, point: (name: string) => Point): [Point, Point] {
  return [point(at[0]), point(at[1] ?? at[0])];
}
