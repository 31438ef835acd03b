import { contour } from './contours.ts';
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
          d={contour(lattice, um)
            .map(([from, to]) => {
              const [a, b] = [view.point(...from), view.point(...to)];
              return `M${a.x.toFixed(1)} ${a.y.toFixed(1)}L${b.x.toFixed(1)} ${b.y.toFixed(1)}`;
            })
            .join('')}
        />
      ))}
    </g>
  );
}
