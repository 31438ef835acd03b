import { JobFolder } from '../../daemon/job/job-folder.ts';
import { loadSurveys } from '../../daemon/job/load.ts';
import { demoScene, demoSetups } from '../../daemon/simulate/scenario.ts';
import type { Surface } from '../../daemon/simulate/world.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { surveyInto } from './survey-into.ts';

const by = 'first shift';
const day = 86_400_000;
const begun = Date.UTC(2026, 2, 2, 8, 0, 0);

/**
 * A job with one surface of the kind of `input`: as found, the planned passes, in work 1, and as left where all of it
 * stands out a quarter as far; no further than `last`. Invented, in made-up time.
 */
export async function madeUpJob(
  path: string,
  input: SetupInput,
  limits: Record<string, number>,
  last: (typeof rounds)[number][0] = 'as left',
) {
  const folder = await JobFolder.create(path, { part: input.part, owner: 'invented' });
  const found = setupSchema.parse({ ...input, operator: by, support: '3 feet', partC: 19.8, airC: 20.2 });
  const { surface } = found;
  const scene = demoScene(found);
  const stamp = (days: number) => ({ at: new Date(begun + days * day).toISOString(), by });
  await folder.add(
    { ...stamp(0), change: 'surface', surface, madeFrom: [] },
    {
      ...stamp(0),
      change: 'limits',
      surface,
      limits: Object.entries(limits).map(([figure, max]) => ({
        figure,
        max,
        source: 'agreed with the customer',
      })),
    },
    {
      ...stamp(0),
      change: 'target',
      surface,
      target: { shape: 'flat', crownUm: 0, tilt: 'free', biteUm: 2, stopPasses: 1, passesPerRound: 3 },
    },
  );
  for (const [k, [round, share]] of rounds.entries()) {
    const metal: Surface = (x, y) => share * scene.surface(x, y);
    const setup = setupSchema.parse({ ...found, round, partC: 19.8 + 0.4 * k });
    await surveyInto(folder, stamp(k), {
      setup,
      scene: { ...scene, surface: metal },
      seed: 7 + k,
      t: begun + k * day,
    });
    if (round === last) break;
    const metals = Object.values((await loadSurveys(folder)).surveys.at(-1)!.result.metal);
    const passes = metals.flatMap(({ plan }) => plan.slice(0, 3).map(({ stations }) => stations));
    if (passes.length > 0) await folder.add({ ...stamp(k), change: 'passes', surface, passes });
  }
  return folder;
}

const rounds = [
  ['as found', 1],
  ['in work 1', 0.6],
  ['as left', 0.25],
] as const;

/** Surveys that a job is made of to see how it looks. */
export const bedSetup: SetupInput = {
  ...demoSetups.bed,
  part: 'Toolroom lathe 11',
  surface: 'bed',
  stations: 9,
};
export const plateSetup: SetupInput = {
  ...demoSetups.plate,
  part: 'Surface plate 4',
  surface: 'plate',
};
