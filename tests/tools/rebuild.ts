import type { JobFolder } from '../../daemon/job/job-folder.ts';
import { loadSurveys } from '../../daemon/job/load.ts';
import type { Surface } from '../../daemon/simulate/world.ts';
import { type Bite, biteBetween } from '../../shared/job/bite.ts';
import { roundsForeseen } from '../../shared/job/convergence.ts';
import type { JobTarget } from '../../shared/job/document.ts';
import { roundName } from '../../shared/job/template.ts';
import { historiesOf } from '../../shared/report/history.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import type { Session } from '../../shared/session/fold.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { planFor } from '../../shared/survey/plan-for.ts';
import { random } from './random.ts';
import { type Hand, ScrapedWay } from './scraper.ts';
import { surveyInto } from './survey-into.ts';

/** A way to be rebuilt, and who does it with what hand. */
export interface Rebuild {
  readonly setup: SetupInput & { readonly kind: 'way' };
  readonly asFound: Surface;
  readonly limitUm: number;
  readonly source: string;
  readonly target: JobTarget;
  readonly hand: Hand;
  readonly seed: number;
  /** Wall clock of the first survey, ms since 1970. */
  readonly t: number;
  /** Changes of the set-up of the survey as left. */
  readonly asLeft?: Partial<SetupInput>;
  /** What else is written into the recording of a round, after its walk. */
  readonly also?: (session: Session) => NewEvent[];
}

export interface Rebuilt {
  readonly foreseen: number;
  readonly rounds: number;
  readonly bites: readonly Bite[];
}

const dayMs = 86_400_000;
/** More rounds than this and the plan leads nowhere. */
const patience = 12;

/**
 * Rebuilds one way in made-up time: survey, planned passes with an uneven hand, survey again, the bite learnt each
 * time, until it is surely within its limit; then a last survey as left.
 */
export async function rebuildWay(folder: JobFolder, rebuild: Rebuild): Promise<Rebuilt> {
  const { limitUm, source, hand, seed } = rebuild;
  const setup = setupSchema.parse({ ...rebuild.setup, limit: limitUm });
  const chance = random(seed);
  const { surface } = setup;
  const metal = new ScrapedWay(
    rebuild.asFound,
    new Map(planFor(setup).stations.map(({ name, xMm }) => [name, xMm])),
  );
  let target = rebuild.target;
  let t = rebuild.t;
  const stamp = () => ({ at: new Date(t).toISOString(), by: setup.operator });
  const figure = `${surface}.straightness`;
  await folder.add(
    { ...stamp(), change: 'surface', surface, madeFrom: [] },
    { ...stamp(), change: 'limits', surface, limits: [{ figure, max: limitUm, source }] },
    { ...stamp(), change: 'target', surface, target },
  );

  const survey = async (round: string, more: Partial<SetupInput> = {}) => {
    const now = setupSchema.parse({ ...setup, ...more, round });
    await surveyInto(folder, stamp(), {
      setup: now,
      seed: seed * 100 + folder.job.changes.length,
      t,
      scene: { name: `${surface} under the scraper`, surface: metal.surface() },
      hand: (place, _, world) => world.reading(place) + (setup.instrument.sigma ?? 0) * chance.normal(),
      ...(rebuild.also && { also: rebuild.also }),
    });
    return (await loadSurveys(folder)).surveys.at(-1)!;
  };

  let newest = await survey(roundName(0));
  const planned = () => newest.result.metal[surface]!.plan.map(({ stations }) => stations);
  const foreseen = roundsForeseen(planned().length, target.passesPerRound);
  const bites: Bite[] = [];
  let rounds = 0;
  while (newest.result.verdicts[0]!.verdict !== 'within' && rounds < patience) {
    const passes = planned().slice(0, target.passesPerRound);
    t += dayMs;
    metal.scrape(passes, hand, chance);
    await folder.add({ ...stamp(), change: 'passes', surface, passes });
    rounds += 1;
    const before = newest;
    newest = await survey(roundName(rounds));
    const bite = biteBetween(before.heights, newest.heights, passes);
    if (!bite) continue;
    bites.push(bite);
    target = { ...target, biteUm: Number(bite.biteUm.toFixed(1)) };
    await folder.add({ ...stamp(), change: 'target', surface, target });
  }
  t += dayMs;
  await survey('as left', rebuild.asLeft);
  return { foreseen, rounds, bites };
}

/** What a rebuild came to, survey by survey, to compare with what was once looked at and found good. */
export async function rebuildSummary(folder: JobFolder) {
  const histories = historiesOf(folder.job, (await loadSurveys(folder)).surveys);
  return histories.flatMap(({ surface, surveys, bites }) =>
    surveys.map(({ record, result }, k) => ({
      surface: surface.name,
      round: record.round,
      verdicts: result.verdicts,
      passes: surface.rounds[k]!.passes.length,
      bite: k === 0 ? null : (bites[k - 1] ?? null),
    })),
  );
}
