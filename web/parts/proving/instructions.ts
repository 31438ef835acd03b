import type { Pose, Proving, ProvingStep } from '../../../shared/proving/proving.ts';

/** What to do next, in large words, and why. */
export interface Instruction {
  readonly what: string;
  readonly context: string;
}

const stepNames: Readonly<Record<ProvingStep, string>> = {
  sign: 'Which way is plus',
  scale: 'Unit and scale by a known step',
  zero: 'Zero by turning',
  spread: 'How well it repeats',
};

export function stepName(step: ProvingStep): string {
  return stepNames[step];
}

/** The instruction for a pose. */
export function instructionFor(proving: Proving, pose: Pose): Instruction {
  const step = `${proving.stepUm} µm ${proving.stepIs === 'block' ? 'of gauge block' : 'feeler'}`;
  return proving.reads === 'tilt' ? forLevel(proving.far, step, pose) : forIndicator(step, pose);
}

function forLevel(far: string, step: string, pose: Pose): Instruction {
  switch (pose) {
    case 'rest':
      return { what: 'Set the level down and let it rest', context: 'A flat place that does not give.' };
    case 'moved':
      return {
        what: `Lift its far foot, the ${far}, a little`,
        context: 'Anything thin slipped under it will do: only the way it goes counts.',
      };
    case 'flat':
      return { what: 'Set it flat again, both feet down', context: 'The known step is read from here.' };
    case 'on-step':
      return {
        what: `Put the ${step} under the far foot, the ${far}`,
        context: 'Right under the foot, and clean: the foot spacing is taken from there.',
      };
    case 'as-is':
      return {
        what: 'Take the step out, and mark where the feet stand',
        context: 'It will be turned end for end on the same marks.',
      };
    case 'turned':
      return {
        what: 'Turn it end for end, on the same marks',
        context: 'What the place leans drops out; what stays is the zero of the level.',
      };
    default:
      return seat(pose);
  }
}

function forIndicator(step: string, pose: Pose): Instruction {
  switch (pose) {
    case 'rest':
      return {
        what: 'Set the tip on the metal and let it rest',
        context: 'Somewhere in the middle of its travel.',
      };
    case 'moved':
      return {
        what: 'Push the indicator towards the metal, tip in',
        context: 'As metal that stands HIGH would push it. Only the way it goes counts.',
      };
    case 'flat':
      return { what: 'Set the tip back on the metal', context: 'The known step is read from here.' };
    case 'on-step':
      return { what: `Put the ${step} under the tip`, context: 'Clean, and flat on the metal.' };
    default:
      return seat(pose);
  }
}

function seat(pose: Pose): Instruction {
  const number = Number(pose.at(-1));
  return {
    what: number === 1 ? 'Set it down on one place' : 'Lift it, and set it down on the same place',
    context: `Setting ${number} of 5: what differs is how well one reading can be trusted.`,
  };
}
