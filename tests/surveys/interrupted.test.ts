import fc from 'fast-check';
import { expect, test } from 'vitest';
import { demoScene } from '../../daemon/simulate/scenario.ts';
import { notices } from '../../shared/notice/notices.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import { resultOf } from '../../shared/session/result.ts';
import { type SetupInput, setupSchema } from '../../shared/session/setup.ts';
import { Conductor, hastyPace, type Pace } from '../tools/conduct.ts';

const surveys: readonly SetupInput[] = [
  { ...demoSetups.way, stations: 6, lengthMm: 750, back: 'same' },
  { ...demoSetups.bed, stations: 4, lengthMm: 600 },
  { ...demoSetups.plate, baseMm: 300, back: 'no' },
  { ...demoSetups.slide, stations: 3 },
  { ...demoSetups.straightedge, stations: 4 },
  demoSetups.square,
  { ...demoSetups.bar, stations: 2 },
  demoSetups.dovetail,
];

/** So long in the hand that it is always felt at once: then the dice fall the same with a break and without. */
const pace: Pace = { ...hastyPace, inHandMs: 900 };

/** The survey done to its end, the daemon stopped and started again after each of the takes numbered. */
async function surveyed(input: SetupInput, breaks: ReadonlySet<number>): Promise<Conductor> {
  const setup = setupSchema.parse(input);
  const conductor = await Conductor.of({ setup, scene: demoScene(setup), seed: 5, pace });
  if (breaks.has(0)) await conductor.interrupt();
  while (conductor.session.next) {
    await conductor.place(conductor.session.next);
    if (breaks.has(conductor.session.takes.length)) await conductor.interrupt();
  }
  await conductor.end();
  return conductor;
}

test.each(surveys.map((input) => [input.kind, input] as const))(
  '%s: broken off after each take, after all and after any of them, and gone on with, the result is the same',
  async (_, input) => {
    const whole = await surveyed(input, new Set());
    const takes = whole.session.takes.length;
    const values = (conductor: Conductor) =>
      conductor.session.takes.map(({ event }) => [event.place, event.value]);
    const expectSame = (broken: Conductor) => {
      expect(values(broken)).toEqual(values(whole));
      expect(resultOf(broken.session)).toEqual(resultOf(whole.session));
    };
    expectSame(await surveyed(input, new Set(Array.from({ length: takes + 1 }, (_, k) => k))));
    for (let at = 0; at <= takes; at += 1) expectSame(await surveyed(input, new Set([at])));
    await fc.assert(
      fc.asyncProperty(
        fc.uniqueArray(fc.nat({ max: takes }), { minLength: 1, maxLength: 4 }),
        async (breaks) => {
          expectSame(await surveyed(input, new Set(breaks)));
        },
      ),
      { numRuns: 6, seed: 20260303 },
    );
  },
  60_000,
);

test('after a break the last good placement is named first, and what has moved meanwhile is told', async () => {
  const setup = setupSchema.parse({
    ...demoSetups.way,
    instrument: { ...demoSetups.way.instrument, sigma: 0.3 },
  });
  let moved = 0;
  const conductor = await Conductor.of({
    setup,
    scene: demoScene(setup),
    seed: 6,
    pace: hastyPace,
    hand: (place, _, world) => world.reading(place) + moved,
  });
  const places = conductor.session.placements;
  for (const place of places.slice(0, 6)) await conductor.place(place);
  await conductor.interrupt();
  const told = () => notices(conductor.session, resultOf(conductor.session)).filter(({ warns }) => warns);
  expect(told()).toEqual([
    {
      code: 'broken-off',
      text: 'The survey was broken off. Last good was F5 – F6 (front way, going out); repeat it first: it tells whether anything has moved.',
      place: places[5],
      warns: true,
    },
  ]);
  await conductor.ask({ do: 'aim', place: places[5]! });
  await conductor.place(places[5]!);
  expect(told()).toEqual([]);

  await conductor.interrupt();
  moved = 6;
  await conductor.ask({ do: 'aim', place: places[5]! });
  await conductor.place(places[5]!);
  expect(told()).toMatchObject([{ code: 'moved-in-break', place: places[5] }]);
  expect(told()[0]!.text).toMatch(
    /^F5 – F6 reads (5|6)\.\d µm\/m more than before the break: the part or the zero has moved\. Take "front way, going out" again from its start\.$/,
  );
  await conductor.end();
});
