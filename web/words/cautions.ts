import type { Kind } from './kinds.ts';
import { say } from './say.ts';

/** What can hurt in each kind of survey, in a few words each. */
export function cautionsOf(kind: Kind): readonly string[] {
  return [...ofKind(kind), rules()];
}

/** All of them, for the help where no survey is on. */
export function allCautions(): readonly string[] {
  return [lifting(), jacked(), straightedge(), spindle(), edges(), rules()];
}

function ofKind(kind: Kind): readonly string[] {
  switch (kind) {
    case 'way':
    case 'bed':
      return [lifting(), jacked()];
    case 'plate':
    case 'repeat':
      return [lifting()];
    case 'slide':
      return [say('Move the slide by hand, power locked out. Keep fingers out of its path.')];
    case 'straightedge':
      return [straightedge()];
    case 'square':
      return [say('A square is heavy and falls easily: two hands, and never over an edge.')];
    case 'bar':
    case 'collars':
    case 'face':
      return [spindle()];
    case 'dovetail':
      return [say('Pins roll and pinch. Block the slide so that it cannot run off its way.'), edges()];
  }
}

const lifting = () =>
  say('Lifting or turning a casting is work for people who are trained for it, with gear rated for it.');
const jacked = () => say('Jacked or sprung iron can move: nothing of you under it or between it.');
const straightedge = () =>
  say('A straightedge is heavy and pinches: turn it over with two people, fingers clear of its edges.');
const spindle = () => say('Turn a spindle by hand only, with the power locked out.');
const edges = () => say('Freshly scraped edges cut.');
const rules = () =>
  say('The rules of your shop and country come first; leave to qualified people what is theirs.');
