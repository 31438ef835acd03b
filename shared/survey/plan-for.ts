import type { Setup } from '../session/setup.ts';
import { planBed } from './bed.ts';
import { planDovetail } from './dovetail.ts';
import type { Plan } from './plan.ts';
import { planPlate } from './plate.ts';
import { planRepeat } from './repeat.ts';
import { planSlide } from './slide.ts';
import { planBar, planStraightedge } from './turned.ts';
import { planCollars, planFace } from './turned-parts.ts';
import { planWay } from './way.ts';

/** The plan of a survey from its set-up: the one place that tells kinds apart. */
export function planFor(setup: Setup): Plan {
  switch (setup.kind) {
    case 'way':
      return planWay(setup, setup.surface);
    case 'bed':
      return planBed(setup);
    case 'plate':
      return planPlate(setup);
    case 'slide':
      return planSlide(setup);
    case 'straightedge':
    case 'square':
      return planStraightedge(setup);
    case 'bar':
      return planBar(setup);
    case 'dovetail':
      return planDovetail(setup);
    case 'repeat':
      return planRepeat(setup);
    case 'collars':
      return planCollars(setup);
    case 'face':
      return planFace(setup);
  }
}
