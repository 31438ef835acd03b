import {
  Chart,
  type ChartDataset,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
} from 'chart.js';
import type { Ink } from './ink.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

/** A curve of the profile: px along the shared axis, µm up. */
export interface CurvePoint {
  readonly x: number;
  readonly y: number;
}

/** One line of the survey with its band. The first is drawn through, the others are told apart by their dashes. */
export interface Curve {
  readonly line: readonly CurvePoint[];
  readonly upper: readonly CurvePoint[];
  readonly lower: readonly CurvePoint[];
}

export interface ProfileModel {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly minUm: number;
  readonly maxUm: number;
  readonly curves: readonly Curve[];
  /** The hidden true shape of a simulated part, when it is laid over. */
  readonly truth: readonly (readonly CurvePoint[])[];
  readonly points: boolean;
}

export interface ProfileChart {
  draw(model: ProfileModel, ink: Ink): void;
  destroy(): void;
}

/**
 * The profile on a canvas whose whole area is the plot: a station's px is its px on the part above. Axes and
 * words are drawn over it, so that they share the type and the colours of the sheet.
 */
export function createProfileChart(canvas: HTMLCanvasElement): ProfileChart {
  const chart = new Chart<'line', CurvePoint[]>(canvas, {
    type: 'line',
    data: { datasets: [] },
    options: {
      responsive: false,
      maintainAspectRatio: false,
      animation: false,
      parsing: false,
      normalized: true,
      events: [],
      layout: { padding: 0, autoPadding: false },
      scales: { x: { type: 'linear', display: false }, y: { type: 'linear', display: false } },
    },
  });
  return {
    draw(model, ink) {
      const { x, y } = chart.options.scales ?? {};
      Object.assign(x ?? {}, { min: 0, max: model.widthPx });
      Object.assign(y ?? {}, { min: model.minUm, max: model.maxUm });
      chart.data.datasets = datasets(model, ink);
      if (chart.width !== model.widthPx || chart.height !== model.heightPx) {
        chart.resize(model.widthPx, model.heightPx);
      }
      chart.update('none');
    },
    destroy: () => chart.destroy(),
  };
}

const dashes = [[], [9, 5], [3, 4], [12, 4, 3, 4]] as const;

function datasets({ curves, truth, points }: ProfileModel, ink: Ink): ChartDataset<'line', CurvePoint[]>[] {
  const edge = { borderWidth: 0, pointRadius: 0 };
  return [
    ...curves.flatMap(({ upper, lower }): ChartDataset<'line', CurvePoint[]>[] => [
      { data: [...upper], ...edge, fill: '+1', backgroundColor: `${ink.print}30` },
      { data: [...lower], ...edge, fill: false },
    ]),
    ...curves.map(
      ({ line }, k): ChartDataset<'line', CurvePoint[]> => ({
        data: [...line],
        borderColor: ink.print,
        borderWidth: 2.5,
        borderDash: [...(dashes[k % dashes.length] ?? [])],
        pointRadius: points ? 4.5 : 2,
        pointBackgroundColor: ink.print,
        pointBorderWidth: 0,
      }),
    ),
    ...truth.map(
      (line): ChartDataset<'line', CurvePoint[]> => ({
        data: [...line],
        borderColor: ink.ink,
        borderWidth: 1.5,
        borderDash: [2, 5],
        pointRadius: points ? 8 : 4,
        pointBackgroundColor: 'transparent',
        pointBorderColor: ink.ink,
        pointBorderWidth: 1.5,
      }),
    ),
  ];
}
