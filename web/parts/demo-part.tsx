import { demoSetups } from '../../shared/session/demo-setups.ts';
import { begin } from '../../shared/session/fold.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { across } from '../drawing/across.ts';
import { Part } from '../drawing/part.tsx';
import { useSize } from '../drawing/use-size.ts';

const setup = setupSchema.parse(demoSetups.way);
const session = begin({ recording: 1, id: 'demo', program: '', t: 0, setup });
const [line = ''] = Object.keys(session.plan.lines);
const lengthMm = Math.max(...session.plan.stations.map(({ xMm }) => xMm));

/** The way of the demo with its level in the hand, over where it begins. */
export function DemoPart() {
  const { ref, widthPx } = useSize<HTMLDivElement>();
  return (
    <section class="drawing still" ref={ref} aria-label="The way of the demo">
      {widthPx > 0 && (
        <Part
          across={across(widthPx, lengthMm, lengthMm, 14)}
          session={session}
          line={line}
          title={null}
          first
          last
          standsOn={session.next}
          lifted
          picked={null}
          suspect={null}
        />
      )}
    </section>
  );
}
