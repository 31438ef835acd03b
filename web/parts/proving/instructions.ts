import type { Pose, Proving, ProvingStep } from '../../../shared/proving/proving.ts';
import { asWritten } from '../../words/quantity.ts';
import { say, text } from '../../words/say.ts';

/** What to do next, in large words, and why. */
export interface Instruction {
  readonly what: string;
  readonly context: string;
}

const stepNames: Readonly<Record<ProvingStep, string>> = {
  sign: text('Which way is plus'),
  scale: text('Unit and scale by a known step'),
  zero: text('Zero by turning'),
  spread: text('How well it repeats'),
};

export function stepName(step: ProvingStep): string {
  return say(stepNames[step]);
}

/** The instruction for a pose. */
export function instructionFor(proving: Proving, pose: Pose): Instruction {
  const size = asWritten().exact(proving.stepUm);
  const step =
    proving.stepIs === 'block' ? say('{size} of gauge block', { size }) : say('{size} feeler', { size });
  return proving.reads === 'tilt' ? forLevel(proving.far, step, pose) : forIndicator(step, pose);
}

function forLevel(far: string, step: string, pose: Pose): Instruction {
  switch (pose) {
    case 'rest':
      return {
        what: say('Set the level down and let it rest'),
        context: say('A flat place that does not give.'),
      };
    case 'moved':
      return {
        what: say('Lift its far foot, the {far}, a little', { far }),
        context: say('Anything thin slipped under it will do: only the way it goes counts.'),
      };
    case 'flat':
      return {
        what: say('Set it flat again, both feet down'),
        context: say('The known step is read from here.'),
      };
    case 'on-step':
      return {
        what: say('Put the {step} under the far foot, the {far}', { step, far }),
        context: say('Right under the foot, and clean: the foot spacing is taken from there.'),
      };
    case 'as-is':
      return {
        what: say('Take the step out, and mark where the feet stand'),
        context: say('It will be turned end for end on the same marks.'),
      };
    case 'turned':
      return {
        what: say('Turn it end for end, on the same marks'),
        context: say('What the place leans drops out; what stays is the zero of the level.'),
      };
    default:
      return seat(pose);
  }
}

function forIndicator(step: string, pose: Pose): Instruction {
  switch (pose) {
    case 'rest':
      return {
        what: say('Set the tip on the metal and let it rest'),
        context: say('Somewhere in the middle of its travel.'),
      };
    case 'moved':
      return {
        what: say('Push the indicator towards the metal, tip in'),
        context: say('As metal that stands HIGH would push it. Only the way it goes counts.'),
      };
    case 'flat':
      return {
        what: say('Set the tip back on the metal'),
        context: say('The known step is read from here.'),
      };
    case 'on-step':
      return {
        what: say('Put the {step} under the tip', { step }),
        context: say('Clean, and flat on the metal.'),
      };
    default:
      return seat(pose);
  }
}

function seat(pose: Pose): Instruction {
  const number = Number(pose.at(-1));
  return {
    what: number === 1 ? say('Set it down on one place') : say('Lift it, and set it down on the same place'),
    context: say('Setting {number} of 5: what differs is how well one reading can be trusted.', { number }),
  };
}
