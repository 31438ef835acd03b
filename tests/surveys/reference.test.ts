import { describe, expect, test } from 'vitest';
import type { Scene } from '../../daemon/simulate/world.ts';
import { resultOf } from '../../shared/session/result.ts';
import { type Setup, setupSchema } from '../../shared/session/setup.ts';
import { toSheet } from '../../shared/session/to-sheet.ts';
import { Conductor, type LeaningPart } from '../tools/conduct.ts';

/** A level that stays put on a part whose floor gives way while it is measured. All of it is constructed. */

const scene: Scene = { name: 'hollow', surface: (x) => -8 * Math.sin((Math.PI * x) / 1800) };
const level = { source: 'cable', profile: 'line-decimal', unit: 'um/m', graduation: 1 } as const;
const quiet = { zero: 20, noise: 0, driftPerHour: 0, settleMs: 60, swing: 120 };

function setupFor(faces: 'far' | 'start', back: 'same' | 'turned' = 'same', sigma = false): Setup {
  return setupSchema.parse({
    kind: 'way',
    part: 'Test bench',
    surface: 'way',
    lengthMm: 1800,
    baseMm: 300,
    stations: 7,
    back,
    instrument: { ...level, name: 'walks', port: 'a', ...(sigma && { sigma: 0.4 }) },
    others: [
      { ...level, name: 'stays', port: 'b', unit: 'arcsec', channel: 'tilt', ...(sigma && { sigma: 0.1 }) },
    ],
    reference: { name: 'stays', faces },
  });
}

/** Its plus end to the start, it reads the lean of the part the other way. */
const leaning = (faces: 'far' | 'start', rest: Partial<LeaningPart> = {}): LeaningPart => {
  const sense = faces === 'far' ? 1 : -1;
  return { lean: (ms) => 0.0004 * ms, zero: 55, everyMs: 130, sense, ...rest };
};

async function surveyed(setup: Setup, part: LeaningPart): Promise<Conductor> {
  const conductor = await Conductor.of({ setup, scene, seed: 5, traits: quiet, leaning: part });
  await conductor.walk();
  return conductor;
}

const heights = ({ session }: Conductor) =>
  Object.values(resultOf(session).stations).map(({ heightUm }) => heightUm);

describe('a part that leans while it is walked', () => {
  test.each([
    ['far', 'same'],
    ['start', 'same'],
    ['far', 'turned'],
    ['start', 'turned'],
  ] as const)('is straight in the result, plus end to the %s, walked back %s', async (faces, back) => {
    const setup = setupFor(faces, back);
    // A crate is leant against it while it is walked.
    const lean = (ms: number) => 8 * Math.tanh((ms - 9000) / 4000);
    const conductor = await surveyed(setup, leaning(faces, { lean }));
    const truth = Object.values(conductor.world.truthUm());
    const [first, last] = [truth[0]!, truth.at(-1)!];
    const due = truth.map((height, k) => height - first - (k / 6) * (last - first));
    const found = heights(conductor);
    found.forEach((height, k) => {
      // The last digits of both levels: 0.1 µm/m, and 0.1 arc seconds.
      expect(Math.abs(height - due[k]!)).toBeLessThan(0.4);
    });
    // Without it the part would seem bent.
    const { reference: _, ...alone } = setup;
    const bare = { ...conductor.session, setup: alone as Setup };
    const worst = Math.max(
      ...Object.values(resultOf(bare).stations).map(({ heightUm }, k) => Math.abs(heightUm - due[k]!)),
    );
    expect(worst).toBeGreaterThan(0.9);
  });

  test('is straight, too, where the level was turned in mid-walk: the lean is taken off the way it was read', async () => {
    const turnedFrom = 3;
    const setup = setupFor('far');
    const conductor = await Conductor.of({
      setup,
      scene,
      seed: 5,
      traits: quiet,
      // It leans most while the level is walked turned.
      leaning: leaning('far', { lean: (ms) => 8 * Math.tanh((ms - 17_000) / 4000) }),
      hand: (place, nth, world) =>
        (place.run === 'way out' && nth >= turnedFrom ? -1 : 1) * world.reading(place),
    });
    for (let k = 0; k < turnedFrom; k += 1) await conductor.place(conductor.session.next!);
    await conductor.ask({ do: 'turned' });
    await conductor.walk();
    const truth = Object.values(conductor.world.truthUm());
    const [first, last] = [truth[0]!, truth.at(-1)!];
    heights(conductor).forEach((height, k) => {
      const due = truth[k]! - first - (k / 6) * (last - first);
      expect(Math.abs(height - due)).toBeLessThan(0.4);
    });
  });

  test('on record both are as they read, and the subtraction is stated', async () => {
    const conductor = await surveyed(setupFor('far'), leaning('far'));
    const { events, session } = conductor;
    const takes = events.filter((event) => event.type === 'take');
    const said = (seq: number) => events.find((event) => event.seq === seq);
    for (const { reference, readings } of takes) {
      const own = events.filter(
        (event) =>
          event.type === 'reading' &&
          event.from === 'walks' &&
          event.seq >= readings![0] &&
          event.seq <= readings![1],
      );
      const [before, after] = reference!.readings.map(said);
      expect([before, after]).toMatchObject([
        { type: 'reading', from: 'stays' },
        { type: 'reading', from: 'stays' },
      ]);
      expect(before!.m).toBeLessThanOrEqual(own[0]!.m);
      expect(after!.m).toBeGreaterThanOrEqual(own.at(-1)!.m);
      // A steady lean: its mean over the take is the lean at the middle of the take, in arc seconds.
      const middle = own.reduce((sum, { m }) => sum + m, 0) / own.length;
      expect(Math.abs(reference!.value - (55 + 0.0004 * middle) / 4.848137)).toBeLessThan(0.06);
    }
    expect(toSheet(session).notes).toBe(
      'How far the reference level stays went since the first take is taken off 12 readings, at matched times.',
    );
  });

  test('the uncertainties of both levels are put together', async () => {
    const { session } = await surveyed(setupFor('far', 'same', true), leaning('far'));
    // 0.4 µm/m, and 0.1 arc seconds of 4.848 µm/m.
    expect(toSheet(session).walks?.[0]?.sigma).toBeCloseTo(Math.hypot(0.4, 0.4848137), 6);
  });
});

test('a reference level that is silent, or goes silent in a take, lets nothing be taken, and says so', async () => {
  let silent = false;
  const part = leaning('far', { lean: () => 0, silent: () => silent });
  const setup = setupFor('far');
  const conductor = await Conductor.of({ setup, scene, seed: 5, traits: quiet, leaning: part });
  const refused: string[] = [];
  conductor.keeper.refused$.subscribe(({ message }) => refused.push(message));
  await conductor.place(conductor.session.next!);
  conductor.pendulum.lift();
  await conductor.pass(800);
  silent = true;
  conductor.pendulum.setDown(3, 0);
  await conductor.pass(3000);
  // It has not spoken behind the take: the take waits, and is lost with it.
  expect(conductor.session.takes).toHaveLength(1);
  silent = false;
  conductor.loseStill();
  await conductor.pass(500);
  expect(refused[0]).toContain('the reference level stays was not read all through this take');
  expect(conductor.session.takes).toHaveLength(1);
});

test('a reference level that is knocked is waited for', async () => {
  let bump = 0;
  const part = leaning('far', { lean: (ms) => bump * Math.sin(ms) });
  const setup = setupFor('far');
  const conductor = await Conductor.of({ setup, scene, seed: 5, traits: quiet, leaning: part });
  const refused: string[] = [];
  conductor.keeper.refused$.subscribe(({ message }) => refused.push(message));
  await conductor.pass(2000);
  conductor.pendulum.lift();
  await conductor.pass(800);
  bump = 30;
  conductor.pendulum.setDown(3, 0);
  // What it reads itself leans along: only the one that stays put is knocked.
  await conductor.pass(4000);
  const before = conductor.session.takes.length;
  bump = 0;
  await conductor.pass(4000);
  expect(before).toBe(0);
  expect(conductor.session.takes).toHaveLength(1);
});
