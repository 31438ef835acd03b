import type { ComparedLine } from '../../shared/replay/compared.ts';
import { heightLabel, heightsAxis } from './heights-axis.ts';
import { useSize } from './use-size.ts';

const heightPx = 190;
const leftPx = 90;
const rightPx = 16;
const labelPx = 18;

/** Two profiles of one line on one scale, with the bands of neither: what differs is marked at its station. */
export function CompareDrawing({ line: { stations } }: { line: ComparedLine }) {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  const values = stations.flatMap(({ firstUm, secondUm }) => [firstUm, secondUm]);
  const axis = heightsAxis(values, Math.max(0.1, ...stations.map(({ uUm }) => uUm)), 5, 'below');
  const [from, to] = [stations[0]!.xMm, stations.at(-1)!.xMm];
  const plotPx = heightPx - labelPx;
  const px = (xMm: number) => leftPx + ((xMm - from) / (to - from)) * (widthPx - leftPx - rightPx);
  const py = (um: number) => ((axis.maxUm - um) / (axis.maxUm - axis.minUm)) * plotPx;
  const path = (height: 'firstUm' | 'secondUm') =>
    stations.map((station, k) => `${k === 0 ? 'M' : 'L'}${px(station.xMm)} ${py(station[height])}`).join('');
  return (
    <div ref={ref} style={{ height: `${heightPx}px` }}>
      {widthPx > 0 && (
        <svg class="compare-drawing" width={widthPx} height={heightPx} role="img" aria-label="Two profiles">
          {axis.ticksUm.map((um) => (
            <g key={um}>
              <path class="grid" d={`M${leftPx} ${py(um)}H${widthPx - rightPx}`} />
              <text x={leftPx - 8} y={Math.min(plotPx - 2, Math.max(11, py(um) + 4))} text-anchor="end">
                {heightLabel(um, axis.stepUm)}
              </text>
            </g>
          ))}
          {stations.map(({ name, xMm, firstUm, secondUm, differs }) => (
            <g key={name}>
              {differs && <path class="apart" d={`M${px(xMm)} ${py(firstUm)}V${py(secondUm)}`} />}
              <text x={px(xMm)} y={heightPx - 3} text-anchor="middle">
                {name}
              </text>
            </g>
          ))}
          <path class="first" d={path('firstUm')} />
          <path class="second" d={path('secondUm')} />
        </svg>
      )}
    </div>
  );
}
