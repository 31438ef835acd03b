import { describe, expect, test } from 'vitest';
import { reduce } from '../shared/reduce.ts';
import type { Result } from '../shared/sheet/result.ts';
import type { Sheet } from '../shared/sheet/schema.ts';
import { validateSheet } from '../shared/sheet/sheet.ts';
import { random } from './tools/random.ts';

/** Every number of a result that has an uncertainty. */
function numbersOf(result: Result): Map<string, { value: number; u: number }> {
  const numbers = new Map<string, { value: number; u: number }>();
  for (const [name, { value, u }] of Object.entries(result.figures)) numbers.set(name, { value, u });
  for (const [name, { heightUm, uUm }] of Object.entries(result.stations)) {
    numbers.set(`station ${name}`, { value: heightUm, u: uUm });
  }
  for (const [name, line] of Object.entries(result.lines)) {
    for (const [reference, { valueUm, uUm }] of Object.entries(line.straightness)) {
      numbers.set(`${name}.straightness ${reference}`, { value: valueUm, u: uUm });
    }
    for (const [station, { heightUm, uUm }] of Object.entries(line.stations)) {
      numbers.set(`${name} ${station}`, { value: heightUm, u: uUm });
    }
  }
  for (const [name, metal] of Object.entries(result.metal)) {
    for (const [station, { removeUm, uUm }] of Object.entries(metal.stations)) {
      numbers.set(`remove ${name} ${station}`, { value: removeUm, u: uUm });
    }
  }
  return numbers;
}

const RUNS = 20_000;

/** Repeats a survey with fresh noise and compares the scatter of every number with its stated uncertainty. */
function compare(sheet: Sheet, seed: number) {
  const noise = random(seed);
  const options = { reference: 'minimumZone' } as const;
  const stated = numbersOf(reduce(sheet, options));
  const sums = new Map([...stated.keys()].map((name) => [name, { sum: 0, squares: 0 }]));
  for (let run = 0; run < RUNS; run++) {
    const walks = sheet.walks.map((walk) => ({
      ...walk,
      readings: walk.readings.map(([from, to, reading]): [string, string, number] => [
        from,
        to,
        reading! + walk.sigma! * noise.normal(),
      ]),
    }));
    for (const [name, { value }] of numbersOf(reduce({ ...sheet, walks }, options))) {
      const total = sums.get(name)!;
      const off = value - stated.get(name)!.value;
      total.sum += off;
      total.squares += off * off;
    }
  }
  for (const [name, { u }] of stated) {
    const { sum, squares } = sums.get(name)!;
    const scatter = Math.sqrt((squares - (sum * sum) / RUNS) / (RUNS - 1));
    if (u === 0) expect(scatter, name).toBeLessThan(1e-9);
    else expect(scatter / u, `${name}, seed ${seed}`).toBeGreaterThan(0.97);
    if (u > 0) expect(scatter / u, `${name}, seed ${seed}`).toBeLessThan(1.03);
  }
}

/** Slopes of µm/m between neighbours, from heights in µm. */
function readingsOf(names: string[], heightsUm: number[], stepMm: number): [string, string, number][] {
  return names
    .slice(1)
    .map((to, k) => [names[k]!, to, (1000 * (heightsUm[k + 1]! - heightsUm[k]!)) / stepMm]);
}

describe('stated uncertainties against the scatter of 20,000 surveys', () => {
  // Shapes are large beside the noise, so that the same stations define the figures in every run.
  test('a bed: two ways, one of them twice, bridged across; lines and plane against their minimum zones', () => {
    const front = { names: ['F0', 'F1', 'F2', 'F3'], heights: [0, 25, 12, -20] };
    const rear = { names: ['R0', 'R1', 'R2', 'R3'], heights: [5, -9, 20, 40] };
    const sheet = validateSheet({
      sheet: 1,
      kind: 'bed',
      stations: Object.fromEntries(
        [front, rear].flatMap(({ names }, row) => names.map((name, k) => [name, [200 * k, 300 * row]])),
      ),
      lines: { front: front.names, rear: rear.names },
      walks: [
        { id: 'front out', zero: 'a', sigma: 2, readings: readingsOf(front.names, front.heights, 200) },
        { id: 'front again', zero: 'a', sigma: 1, readings: readingsOf(front.names, front.heights, 200) },
        { id: 'rear', zero: 'a', sigma: 1, readings: readingsOf(rear.names, rear.heights, 200) },
        {
          id: 'across',
          sigma: 1.5,
          readings: front.names.map((name, k) => [
            name,
            rear.names[k]!,
            (rear.heights[k]! - front.heights[k]!) / 0.3,
          ]),
        },
      ],
    });
    compare(sheet, 4711);
  });

  test('a plate of three lines each way, against its minimum zone', () => {
    const heights = [
      [0, 30, -12],
      [18, -25, 40],
      [-30, 9, 3],
    ];
    const name = (i: number, k: number) => `P${i}${k}`;
    const rows = [0, 1, 2].map((i) =>
      readingsOf(
        [0, 1, 2].map((k) => name(i, k)),
        heights[i]!,
        100,
      ),
    );
    const columns = [0, 1, 2].map((k) =>
      readingsOf(
        [0, 1, 2].map((i) => name(i, k)),
        heights.map((row) => row[k]!),
        80,
      ),
    );
    const sheet = validateSheet({
      sheet: 1,
      kind: 'plate',
      stations: Object.fromEntries(
        heights.flatMap((row, i) => row.map((_, k) => [name(i, k), [100 * k, 80 * i]])),
      ),
      walks: [...rows, ...columns].map((readings, i) => ({
        id: `line ${i}`,
        zero: 'level',
        sigma: 1,
        readings,
      })),
    });
    compare(sheet, 1234);
  });
});
