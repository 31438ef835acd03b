import { describe, expect, it } from 'vitest';
import { isWayscribeError } from '../../shared/errors.ts';
import { reduce } from '../../shared/reduce.ts';
import { resultSchema } from '../../shared/sheet/result.ts';
import { validateSheet } from '../../shared/sheet/sheet.ts';
import { bed, sheetOf, stationRow, stepped } from './sheets.ts';

/** A way with one station that stands up, so that the three references differ. */
function way(
  limits: { figure: string; reference?: 'ends' | 'leastSquares' | 'minimumZone'; max: number }[] = [],
) {
  const { names, stations } = stationRow('F', 6, 200);
  const heights = [0, 1, 2, 9, 4, -3, 2];
  const walks = ['out', 'back'].map((id) => ({
    id,
    sigma: 0.1,
    readings: stepped(names, 200, (k) => heights[k]!),
  }));
  return sheetOf({ kind: 'way', stations, lines: { front: names }, walks, limits });
}

describe('the reference', () => {
  it.each(['ends', 'leastSquares', 'minimumZone'] as const)(
    '%s is what heights are shown against',
    (reference) => {
      const { reference: used, lines, stations } = reduce(way(), { reference });
      expect(used).toBe(reference);
      const shown = Object.values(lines.front!.stations).map(({ heightUm }) => heightUm);
      const range = Math.max(...shown) - Math.min(...shown);
      expect(range).toBeCloseTo(lines.front!.straightness[reference].valueUm, 9);
      for (const [name, { heightUm, uUm }] of Object.entries(lines.front!.stations)) {
        expect(stations[name]!.heightUm).toBeCloseTo(heightUm, 9);
        expect(stations[name]!.uUm).toBeCloseTo(uUm, 9);
      }
    },
  );

  it('is the ends for lines and least squares for planes when nothing is said', () => {
    expect(reduce(way()).reference).toBe('ends');
    const plate = validateSheet({ ...bed({ seed: 1, noise: 1, steps: 4 }), kind: 'plate', lines: {} });
    expect(reduce(plate).reference).toBe('leastSquares');
    expect(reduce(plate, { reference: 'ends' }).reference).toBe('leastSquares');
    expect(reduce(plate, { reference: 'minimumZone' }).reference).toBe('minimumZone');
  });

  it('of several lines together is their plane', () => {
    const sheet = bed({ seed: 1, noise: 1, steps: 4 });
    const { stations, notes } = reduce(sheet);
    const heights = Object.entries(stations).map(
      ([name, { heightUm }]) => [sheet.stations[name]!, heightUm] as const,
    );
    for (const weight of [() => 1, ([x]: [number, number]) => x, ([, y]: [number, number]) => y]) {
      expect(heights.reduce((sum, [place, height]) => sum + weight(place) * height, 0)).toBeCloseTo(0, 6);
    }
    expect(notes.join(' ')).toContain('least-squares plane');
    const zone = Object.values(reduce(sheet, { reference: 'minimumZone' }).stations).map((h) => h.heightUm);
    expect(Math.max(...zone)).toBeCloseTo(-Math.min(...zone), 9);
  });
});

describe('limits', () => {
  it('are judged against the reference that they name, or the one in use', () => {
    const limits = (['ends', 'leastSquares', 'minimumZone'] as const).map((reference) => ({
      figure: 'front.straightness',
      reference,
      max: 11.5,
    }));
    const { verdicts, lines } = reduce(way([...limits, { figure: 'front.straightness', max: 11.5 }]));
    const { straightness } = lines.front!;
    expect(verdicts.map(({ value }) => value)).toEqual([
      straightness.ends.valueUm,
      straightness.leastSquares.valueUm,
      straightness.minimumZone.valueUm,
      straightness.ends.valueUm,
    ]);
    expect(new Set(verdicts.map(({ value }) => value.toFixed(3))).size).toBe(3);
    for (const { value, U, limit, verdict } of verdicts) {
      expect(verdict).toBe(value + U <= limit ? 'within' : value - U > limit ? 'outside' : 'cannot tell');
    }
  });

  it('may be set on hollow and bulge alone', () => {
    const { verdicts } = reduce(
      way([
        { figure: 'front.hollow', max: 0 },
        { figure: 'front.bulge', max: 20 },
      ]),
    );
    expect(verdicts.map(({ verdict }) => verdict)).toEqual(['outside', 'within']);
    expect(verdicts[0]!.value).toBeCloseTo(3 + (2 * 5) / 6, 9);
    expect(verdicts[1]!.value).toBeCloseTo(9 - 1, 9);
  });

  it('on a figure that is not made are refused at their place', () => {
    for (const figure of ['twist', 'rear.straightness', 'front', '__proto__']) {
      try {
        reduce(
          way([
            { figure: 'front.straightness', max: 1 },
            { figure, max: 1 },
          ]),
        );
        expect.unreachable();
      } catch (error) {
        expect(isWayscribeError(error, 'sheet.invalid')).toBe(true);
        expect(String(error)).toContain('limits[1].figure');
      }
    }
  });
});

describe('the target', () => {
  it('is flat when nothing is said, and that is said', () => {
    const result = reduce(way());
    expect(result.metal.front!.target).toBe('flat');
    expect(result.notes.join(' ')).toContain('No target was named');
  });

  it('leaves the last passes to the blue', () => {
    const planned = (stopPasses: number) =>
      reduce({ ...way(), target: { shape: 'flat', crownUm: 0, tilt: 'free', biteUm: 2, stopPasses } }).metal
        .front!.plan;
    expect(planned(0).length).toBeGreaterThan(3);
    expect(planned(2)).toEqual(planned(0).slice(0, -2));
  });
});

describe('a result', () => {
  it('keeps to its schema', () => {
    expect(resultSchema.safeParse(reduce(bed({ seed: 2, noise: 1 }))).error?.issues ?? []).toEqual([]);
    expect(resultSchema.safeParse(reduce(way([{ figure: 'front.hollow', max: 3.17 }]))).success).toBe(true);
  });

  it('lists stations and readings in the order of the sheet', () => {
    const sheet = bed({ seed: 2, noise: 1, steps: 3 });
    const { stations, readings } = reduce(sheet);
    expect(Object.keys(stations)).toEqual(Object.keys(sheet.stations));
    const wanted = sheet.walks.flatMap(({ id, readings: each }) => each.map(([from, to]) => [id, from, to]));
    expect(
      readings.map((reading) => ('walk' in reading ? [reading.walk, reading.from, reading.to] : [])),
    ).toEqual(wanted);
  });
});
