import { Chart, Filler, LinearScale, LineController, LineElement, PointElement } from 'chart.js';
import { type TracePoint, traceMs } from '../state/settle-trace.ts';
import type { Ink } from './ink.ts';

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

export interface SettleModel {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly trace: readonly TracePoint[];
  readonly middle: number;
  /** Largest standard deviation that counts as steady, in the unit of the reading; null when it is not told. */
  readonly limit: number | null;
  readonly grey: boolean;
}

export interface SettleChart {
  draw(model: SettleModel, ink: Ink): void;
  destroy(): void;
}

/** The needle over the last seconds, and the band that it has to keep to. */
export function createSettleChart(canvas: HTMLCanvasElement): SettleChart {
  const chart = new Chart<'line', { x: number; y: number }[]>(canvas, {
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
    draw({ widthPx, heightPx, trace, middle, limit, grey }, ink) {
      const halfBand = 2 * (limit ?? 0.5);
      const now = trace.at(-1)?.m ?? 0;
      // Linear inside the band, logarithmic outside: the swing of a level that was just set down and the
      // last tenth of its settling are seen in one picture.
      const squeeze = (value: number) => Math.asinh((value - middle) / halfBand);
      const reach = Math.max(3, ...trace.map(({ value }) => 1.05 * Math.abs(squeeze(value))));
      const { x, y } = chart.options.scales ?? {};
      Object.assign(x ?? {}, { min: now - traceMs, max: now });
      Object.assign(y ?? {}, { min: -reach, max: reach });
      const level = (value: number) => [
        { x: now - traceMs, y: value },
        { x: now, y: value },
      ];
      const edge = { borderWidth: 0, pointRadius: 0 };
      chart.data.datasets = [
        {
          data: limit === null ? [] : level(squeeze(middle + halfBand)),
          ...edge,
          fill: '+1',
          backgroundColor: `${ink.soft}3a`,
        },
        { data: level(squeeze(middle - halfBand)), ...edge, fill: false },
        {
          data: trace.map(({ m, value }) => ({ x: m, y: squeeze(value) })),
          borderColor: grey ? ink.soft : ink.live,
          borderWidth: 2,
          pointRadius: 0,
        },
      ];
      if (chart.width !== widthPx || chart.height !== heightPx) chart.resize(widthPx, heightPx);
      chart.update('none');
    },
    destroy: () => chart.destroy(),
  };
}
