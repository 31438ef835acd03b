import { z } from 'zod';

/** Under what conditions a survey is taken: asked once, and changed when they change. */

const words = z.string().trim().max(120).optional();
const degreesC = z.number().min(-50).max(100).optional();

export const conditionsShape = {
  operator: words.describe('who measures'),
  support: words.describe('what the part stands on'),
  bolts: words.describe('bolts and clamps: tight or loose'),
  carriage: words.describe('where carriage, tailstock or table stand'),
  mounted: words.describe('what is mounted on the part'),
  standing: words.describe('where the person stands'),
  gloves: words.describe('gloves, or bare hands'),
  partC: degreesC.describe('temperature of the iron, °C'),
  airC: degreesC.describe('temperature of the air, °C'),
  topC: degreesC.describe('temperature of the top of the part, °C'),
  bottomC: degreesC.describe('temperature of the bottom of the part, °C'),
};
type Conditions = { readonly [C in keyof typeof conditionsShape]?: z.infer<(typeof conditionsShape)[C]> };
/** Conditions that are said; what is not said is left out. */
export type SaidConditions = { readonly [C in keyof Conditions]?: Exclude<Conditions[C], undefined> };

/** What of an event or a command is a condition that is said. */
export function saidOf(given: Conditions): SaidConditions {
  const names = Object.keys(conditionsShape) as (keyof Conditions)[];
  return Object.fromEntries(
    names.flatMap((name) => (given[name] === undefined ? [] : [[name, given[name]]])),
  ) as SaidConditions;
}
