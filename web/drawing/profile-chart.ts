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

export interface ProfileModel {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly minUm: number;
  readonly maxUm: number;
  readonly line: readonly CurvePoint[];
  readonly upper: readonly CurvePoint[];
  readonly lower: readonly CurvePoint[];
  /** The hidden true shape of a simulated part, when it is laid over. */
  readonly truth: readonly CurvePoint[];
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
      chart.data.datasets = curves(model, ink);
      if (chart.width !== model.widthPx || chart.height !== model.heightPx) {
        chart.resize(model.widthPx, model.heightPx);
      }
      chart.update('none');
    },
    destroy: () => chart.destroy(),
  };
}

function curves(model: ProfileModel, ink: Ink): ChartDataset<'line', CurvePoint[]>[] {
  const edge = { borderWidth: 0, pointRadius: 0 };
  return [
    { data: [...model.upper], ...edge, fill: '+1', backgroundColor: `${ink.print}30` },
    { data: [...model.lower], ...edge, fill: false },
    {
      data: [...model.line],
      borderColor: ink.print,
      borderWidth: 2.5,
      pointRadius: model.points ? 4.5 : 2,
      pointBackgroundColor: ink.print,
      pointBorderWidth: 0,
    },
    {
      data: [...model.truth],
      borderColor: ink.ink,
      borderWidth: 1.5,
      borderDash: [7, 5],
      pointRadius: model.points ? 8 : 4,
      pointBackgroundColor: 'transparent',
      pointBorderColor: ink.ink,
      pointBorderWidth: 1.5,
    },
  ];
}
