import { contour, joined } from './contours.ts';
import type { Lattice } from './lattice.ts';
import type { PlanView } from './plan-view.ts';
import { edgesUm, type TintSteps } from './tint-steps.ts';

/** Lines of one height, where one step of ink meets the next. */
export function ContourLines({
  view,
  lattice,
  steps,
  kind = 'contour',
}: {
  view: PlanView;
  lattice: Lattice;
  steps: TintSteps;
  kind?: 'contour' | 'contour true';
}) {
  return (
    <g>
      {edgesUm(steps).map((um) => (
        <path
          key={um}
          class={kind}
          d={joined(contour(lattice, um))
            .map((line) => {
              const points = line.map((at) => view.point(...at));
              return `M${points.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
            })
            .join('')}
        />
      ))}
    </g>
  );
}
