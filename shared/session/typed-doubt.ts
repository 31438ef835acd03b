import { WayscribeError } from '../errors.ts';
import { pinAllowanceMm } from '../figures/dovetail.ts';
import { type FarOff, farOff, type Slip } from '../live/far-off.ts';
import { type Placement, placementKey, placementsOf, placeWords, type Run } from '../survey/plan.ts';
import { toInternal } from '../units.ts';
import type { TakeEvent } from './events.ts';
import type { Session } from './fold.ts';
import { isTilt } from './sheet-runs.ts';

/** Typed numbers that are asked back before they count. */

/** Further than this no level on two feet reads, µm/m, and no tip travels, µm (common practice, no source). */
const furthest = { tilt: 20_000, height: 50_000 };
/** So many times its spread a reading may be off by chance. */
const byChance = 3;

/** Why a typed number is asked back at this place, as the refusal that says so; null when it may well be true. */
export function typedDoubt(
  session: Session,
  place: Placement,
  value: number,
  text: string,
): WayscribeError | null {
  const refused = (message: string, remedy: string) =>
    new WayscribeError(
      'take.farOff',
      placeWords(place),
      message,
      `${remedy}, or send it again to take it as it is`,
    );
  const impossible = beyondAll(session, place, value);
  if (impossible) return refused(`${text} is ${impossible}`, 'see its point and its unit');
  const before = comparable(session, place);
  const found = farOff(
    value,
    before.map(({ value }) => value),
    smallestOf(session, before),
  );
  if (!found) return null;
  const digits = Math.max(0, ...before.map(({ raw }) => decimalsOf(raw ?? '')));
  const [least, greatest] = found.range.map((one) => one.toFixed(digits));
  return refused(
    `${text} lies far from what was read so far, ${least} to ${greatest}`,
    cureOf(found, digits),
  );
}

const cures: Readonly<Record<Slip, string>> = {
  point: 'see where its point stands',
  unit: 'see whether it is inch or mm',
  sign: 'see its sign',
};

function cureOf({ slip }: FarOff, digits: number): string {
  return slip ? `${slip.meant.toFixed(digits)} would fit: ${cures[slip.of]}` : 'look at it again';
}

/** What no instrument of this survey can read, in words; null when it can. */
function beyondAll({ setup, plan }: Session, { run }: Placement, value: number): string | null {
  const { unit, graduation } = setup.instrument;
  if (setup.kind === 'dovetail') {
    const sizeMm = toInternal('height', value * graduation, unit) / 1000;
    const { pinDiameterMm: diameterMm, flankAngleDeg: angleDeg, form } = setup;
    const least = form === 'male' ? pinAllowanceMm({ diameterMm, angleDeg, form }) : 0;
    return sizeMm > least ? null : 'less than the pins alone';
  }
  const quantity = isTilt(unit) ? 'tilt' : 'height';
  if (Math.abs(toInternal(quantity, value * graduation, unit)) <= furthest[quantity]) return null;
  const tilt = plan.runs.find(({ id }) => id === run)?.reads === 'tilt';
  return tilt ? 'more than a level on two feet can read' : 'more than the tip can travel';
}

/** What counts so far and was read over the same places, the instrument set up and facing as it is now. */
function comparable({ plan, counted, turnedTakes, turnedRun }: Session, place: Placement): TakeEvent[] {
  const now = plan.runs.find(({ id }) => id === place.run);
  if (!now) return [];
  const signs = (run: Run, turned: boolean) => (run.reads === 'tilt' ? run.facing * (turned ? -1 : 1) : 1);
  const isAlike = (run: Run) =>
    run.id === now.id ||
    (run.line === now.line && coversAlike(run, now) && !setUpAnew(run) && !setUpAnew(now));
  const alike = new Map(plan.runs.filter(isAlike).map((run) => [run.id, run]));
  return [...counted.values()].filter((take) => {
    const run = alike.get(take.place.run);
    if (!run || placementKey(take.place) === placementKey(place)) return false;
    return signs(run, turnedTakes.has(take.seq)) === signs(now, turnedRun === now.id);
  });
}

/** An indicator starts from another height in each sweep, and so does a level whose zero is set anew for each line. */
function setUpAnew(run: Run): boolean {
  return run.reads === 'height' && run.offset === 'free';
}

function coversAlike(a: Run, b: Run): boolean {
  const places = (run: Run) =>
    placementsOf(run)
      .map(({ at }) => at.join('-'))
      .sort()
      .join();
  return places(a) === places(b);
}

/** The smallest difference that means anything among these, as it is typed. */
function smallestOf({ setup }: Session, takes: readonly TakeEvent[]): number {
  const digits = Math.max(0, ...takes.map(({ raw }) => decimalsOf(raw ?? '')));
  return Math.max(10 ** -digits, byChance * (setup.instrument.sigma ?? 0));
}

function decimalsOf(text: string): number {
  return /[.,](\d*)/.exec(text)?.[1]?.length ?? 0;
}
