import { again, type Proving } from './proving.ts';

/**
 * A proving of which something is said anew: what was read stays where it still holds. Readings are kept as they were
 * read, so another unit, graduation or foot spacing only has them judged anew; what lay under which foot does not.
 */
export function redeclared(before: Proving, after: Proving): Proving {
  if (before.reads !== after.reads || before.port !== after.port || before.channel !== after.channel) {
    return { ...after, takes: [] };
  }
  const kept = { ...after, takes: before.takes };
  const sameFoot = before.far === after.far;
  const sameStep = before.stepUm === after.stepUm && before.stepIs === after.stepIs;
  const scaled = sameFoot && sameStep ? kept : again(kept, 'scale');
  return sameFoot ? scaled : again(scaled, 'sign');
}
