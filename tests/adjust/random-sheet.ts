import { type Sheet, type SheetInput, validateSheet } from '../../shared/sheet/sheet.ts';

/** Uniform numbers in [0, 1) from a seed (mulberry32), so that a failing case can be run again. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** A normal deviate from two uniform ones (Box and Muller). */
export function normalFrom(random: () => number): number {
  return Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}

/**
 * A constructed survey of every kind of observation at once: tied by a random tree of tilts, with extra
 * tilts, turned and drifting walks, own, shared and known zeros, sweeps and artefacts. Not every one of
 * them determines its heights.
 */
export function randomSheet(seed: number): Sheet {
  const random = randomFrom(seed);
  const below = (n: number) => Math.floor(random() * n);
  const pick = <T>(...choices: T[]): T => choices[below(choices.length)]!;
  const names = Array.from({ length: 4 + below(16) }, (_, k) => `P${k}`);
  const onLine = random() < 0.3;
  const stations = Object.fromEntries(
    names.map((name, k) => [
      name,
      [k * 150 + random() * 40, onLine ? 0 : random() * 2000] as [number, number],
    ]),
  );
  const value = () => (random() - 0.5) * 40;

  const edges = names.slice(1).map((name, k): [string, string] => [names[below(k + 1)]!, name]);
  for (let extra = below(2 * names.length); extra > 0; extra--) {
    const [a, b] = [pick(...names), pick(...names)];
    if (a !== b) edges.push([a, b]);
  }
  const walkCount = 1 + below(4);
  const walks = Array.from({ length: walkCount }, (_, w) => ({
    id: `w${w}`,
    zero: pick('free', 'known', 'shared', 'shared'),
    facing: pick(1, 1, -1) as 1 | -1,
    drift: random() < 0.25,
    ...(random() < 0.8 && { sigma: 0.5 + random() }),
    readings: edges
      .filter((_, e) => e % walkCount === w || random() < 0.4)
      .map(([a, b]): [string, string, number] => (random() < 0.5 ? [a, b, value()] : [b, a, value()])),
  }));
  const artefact = random() < 0.5;
  const sweeps = Array.from({ length: artefact ? 2 + below(3) : below(3) }, (_, s) => ({
    id: `s${s}`,
    offset: pick('free', 'known'),
    slope: pick('free', 'known'),
    sense: pick(1, -1) as 1 | -1,
    ...(artefact && { artefact: 'bar', turned: s % 2 === 1 }),
    ...(random() < 0.8 && { sigma: 0.2 + random() }),
    readings: names
      .filter(() => artefact || random() < 0.8)
      .map((name): [string, number | null] => [name, random() < 0.05 ? null : value()]),
  }));
  return validateSheet({
    sheet: 1,
    kind: 'network',
    stations,
    walks,
    sweeps,
    gravityCurvature: 'off',
  } as SheetInput);
}
