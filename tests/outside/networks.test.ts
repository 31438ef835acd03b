import { describe, expect, it } from 'vitest';
import { type Adjustment, adjust } from '../../shared/adjust/adjust.ts';
import { type SheetInput, validateSheet } from '../../shared/sheet/sheet.ts';

/**
 * Levelling between bench marks is the same mathematics: a height difference over a distance is a tilt
 * times its base, with known zero. So published networks check the adjustment from outside.
 *
 * Stored copies of the textbook networks: repository Geo-Linux-Calculations/gnu-gama, commit 963c3099,
 * folders tests/gama-local/input and tests/krumm/input/1D, quoted as facts.
 */

type Line = readonly [from: string, to: string, riseM: number, sigmaMm: number];

/** 1 m of rise over this base is 1 µm/m: metres and millimetres stand for µm in the sheet. */
const baseMm = 1000;

/**
 * A network as a sheet whose µm are the metres of the network (heights) and whose sigmas are in metres
 * too. Fixed points are read by a sweep that is known to 1 nm of theirs, so that they don't give way.
 */
function network(lines: readonly Line[], fixed: Readonly<Record<string, number>>): Adjustment {
  const names = [...new Set(lines.flatMap((line) => line.slice(0, 2) as [string, string]))];
  const place = new Map(names.map((name, k) => [name, [0, k * 3] as [number, number]]));
  const distance = (a: string, b: string) => Math.abs(place.get(a)![1] - place.get(b)![1]);
  const sheet: SheetInput = {
    sheet: 1,
    kind: 'network',
    stations: Object.fromEntries(place),
    gravityCurvature: 'off',
    walks: lines.map(([from, to, rise, sigmaMm], k) => ({
      id: `${k}`,
      zero: 'known',
      sigma: (sigmaMm / 1000) * (baseMm / distance(from, to)),
      readings: [[from, to, rise * (baseMm / distance(from, to))]],
    })),
    sweeps: [
      {
        id: 'fixed',
        offset: 'known',
        slope: 'known',
        sigma: 1e-9,
        readings: Object.entries(fixed),
      },
    ],
  };
  return adjust(validateSheet(sheet));
}

const rise = (adjustment: Adjustment, name: string) =>
  adjustment.heights.heightUm[adjustment.heights.names.indexOf(name)]!;
const sdMm = (adjustment: Adjustment, name: string) =>
  Math.sqrt(adjustment.heights.varianceUm2[adjustment.heights.names.indexOf(name)]!) * 1000;
/** Adjusted less observed, mm of rise. */
const residualMm = (adjustment: Adjustment, k: number) => {
  const { xMm, yMm, names } = adjustment.heights;
  const { unknown } = adjustment.observations;
  expect(names.length).toBe(xMm.length);
  return (
    (adjustment.residual[k]! * Math.abs(yMm[unknown[4 * k]!]! - yMm[unknown[4 * k + 1]!]!)) / (baseMm / 1000)
  );
};

describe('a levelling network with one fixed point (Štroner, "Levelling - demo A", stroner-levelling-a.xml)', () => {
  // from, to, rise m, km, v mm, r, w
  const published: [string, string, number, number, number, number, number][] = [
    ['51', '11', 15.4974, 1.045, -1.2699, 0.5332, 0.567],
    ['51', '38', 33.9788, 0.929, -0.6711, 0.4979, 0.329],
    ['51', '1', 16.3779, 1.162, 3.8378, 0.5773, 1.562],
    ['51', '17', 10.4647, 1.169, -2.2192, 0.7143, 0.81],
    ['51', '34', 33.6054, 1.064, 0.0289, 0.5661, 0.012],
    ['51', '32', 19.3166, 0.904, 0.6554, 0.5238, 0.317],
    ['51', '43', 2.0043, 0.969, -0.2122, 0.5715, 0.095],
    ['11', '38', 18.4828, 1.322, -0.8012, 0.5289, 0.319],
    ['38', '1', -17.5951, 0.972, -1.2912, 0.4338, 0.663],
    ['1', '17', -5.9218, 1.288, 2.543, 0.559, 0.999],
    ['17', '34', 23.1419, 1.094, 1.0481, 0.53, 0.459],
    ['34', '32', -14.2892, 1.042, 1.0266, 0.4846, 0.482],
    ['32', '43', -17.3147, 0.896, 1.5324, 0.4548, 0.8],
    ['11', '17', -5.0329, 1.23, -0.7493, 0.5461, 0.305],
    ['17', '43', -8.4571, 0.867, -1.2929, 0.4788, 0.669],
  ];
  const sigmaMm = 3;
  const adjusted = network(
    published.map(([from, to, dh, km]) => [from, to, dh, sigmaMm * Math.sqrt(km)]),
    { 51: 234.3145 },
  );

  it('gives the published heights and standard deviations', () => {
    const heights: [string, number, number][] = [
      ['1', 250.6962378, 2.1025],
      ['11', 249.8106301, 2.0954],
      ['17', 244.7769808, 1.7337],
      ['32', 253.6317554, 1.9683],
      ['34', 267.9199289, 2.0385],
      ['38', 268.2926289, 2.0489],
      ['43', 236.3185878, 1.9331],
    ];
    for (const [name, metres, sd] of heights) {
      expect(rise(adjusted, name)).toBeCloseTo(metres, 7);
      expect(sdMm(adjusted, name)).toBeCloseTo(sd, 3);
    }
  });

  it('gives the published covariances', () => {
    const order = ['1', '11', '17', '32', '34', '38', '43'];
    const upper = [
      [4.4203214, 0.92101812, 1.1569248, 0.32769408, 0.48762949, 1.8326204, 0.51496217],
      [4.3906158, 1.1856937, 0.33584275, 0.49975523, 1.4916998, 0.52776759],
      [3.0058834, 0.85140384, 1.2669427, 0.72934725, 1.3379576],
      [3.8741041, 1.5980125, 0.20658454, 1.6071008],
      [4.1553895, 0.30741085, 0.98283346],
      [4.1981813, 0.32464189],
      [3.7367776],
    ];
    const index = (name: string) => adjusted.heights.names.indexOf(name);
    upper.forEach((row, i) => {
      const c = new Float64Array(adjusted.heights.names.length);
      c[index(order[i]!)] = 1;
      const column = adjusted.heights.covarianceWith(c);
      row.forEach((value, j) => {
        expect((column[index(order[i + j]!)]! * 1e6) / value).toBeCloseTo(1, 6);
      });
    });
  });

  it('gives the published residuals, redundancies and standardised residuals', () => {
    published.forEach(([, , , , v, r, w], k) => {
      expect(residualMm(adjusted, k)).toBeCloseTo(v, 3);
      expect(adjusted.redundancy[k]).toBeCloseTo(r, 3);
      expect(Math.abs(adjusted.standardised[k]!)).toBeCloseTo(w, 3);
    });
    expect(adjusted.fit.degreesOfFreedom).toBe(8);
    expect(adjusted.redundancy.reduce((sum, r) => sum + r, 0)).toBeCloseTo(8, 6);
    // 33.680920 mm² with weights (3 mm)²/σ², s0 2.0518565 mm for 3 mm
    expect(adjusted.fit.s0).toBeCloseTo(0.6839522, 6);
    expect(adjusted.fit.chiSquareOk).toBe(true);
    expect(adjusted.suspect).toBe(-1);
  });
});

describe('a network that fails the global test (Mikhail & Ackermann 1976, example 7.4, p. 147)', () => {
  const published: [string, string, number, number, number, number, number][] = [
    ['A', 'B', 25.42, 18.1, -199.3757, 0.5547, 0.99],
    ['B', 'C', 10.34, 9.4, -25.1941, 0.4037, 0.203],
    ['C', 'A', -35.2, 14.2, -335.4302, 0.5459, 1.895],
    ['B', 'D', -15.54, 17.6, -146.6961, 0.5487, 0.742],
    ['D', 'E', 21.32, 13.5, -7.8995, 0.4715, 0.049],
    ['E', 'C', 4.82, 9.9, -130.5985, 0.4538, 0.969],
    ['E', 'A', -31.02, 13.8, 173.9713, 0.4754, 1.068],
    ['C', 'D', -26.11, 14.0, 108.498, 0.5462, 0.617],
  ];
  const adjusted = network(
    published.map(([from, to, dh, km]) => [from, to, dh, 10 * Math.sqrt(km)]),
    { A: 800 },
  );

  it('gives the published heights, with standard deviations by the scatter found', () => {
    const s0 = adjusted.fit.s0!;
    const heights: [string, number, number][] = [
      ['B', 825.2206243, 180.5144],
      ['C', 835.5354302, 161.455],
      ['D', 809.5339282, 200.965],
      ['E', 830.8460287, 171.0729],
    ];
    for (const [name, metres, sd] of heights) {
      expect(rise(adjusted, name)).toBeCloseTo(metres, 6);
      expect(sdMm(adjusted, name) * s0).toBeCloseTo(sd, 2);
    }
    expect(s0 * 10).toBeCloseTo(63.583349, 5);
  });

  it('gives the published residuals and redundancies, and says that the scatter is too large', () => {
    published.forEach(([, , , , v, r, t], k) => {
      expect(residualMm(adjusted, k)).toBeCloseTo(v, 3);
      expect(adjusted.redundancy[k]).toBeCloseTo(r, 3);
      expect(Math.abs(adjusted.standardised[k]!) / adjusted.fit.s0!).toBeCloseTo(t, 3);
    });
    expect(adjusted.fit.degreesOfFreedom).toBe(4);
    expect(adjusted.fit.chiSquareOk).toBe(false);
  });
});

describe('data snooping (Siki, OSGeoLabBp tutorials, english/data_processing/level_net.rst)', () => {
  const lines: [string, string, number, number][] = [
    ['1', '2', -0.749, 1.1],
    ['1', '3', -1.274, 1.8],
    ['1', '4', -2.89, 1.4],
    ['2', '3', -0.53, 1.5],
    ['2', '4', -2.141, 1.9],
    ['3', '4', -1.614, 0.9],
  ];
  const fixed = { 4: 101.345 };

  it('gives the published figures with sigma proportional to the length, as the page computed them', () => {
    const adjusted = network(
      lines.map(([from, to, dh, km]) => [from, to, dh, 0.7 * km]),
      fixed,
    );
    const heights: [string, number, number][] = [
      ['1', 104.234997, 1.13],
      ['2', 103.486808, 1.19],
      ['3', 102.95882, 0.91],
    ];
    for (const [name, metres, sd] of heights) {
      expect(rise(adjusted, name)).toBeCloseTo(metres, 6);
      expect(sdMm(adjusted, name) * adjusted.fit.s0!).toBeCloseTo(sd, 2);
    }
    expect(adjusted.fit.s0).toBeCloseTo(1.654998, 6);
    [1.9, 2.1, 0, 2.6, 0.7, 0.6].forEach((w, k) => {
      expect(Math.abs(Math.abs(adjusted.standardised[k]!) - w)).toBeLessThan(0.051);
    });
    [0.3, 0.7, 0.5, 0.5, 0.7, 0.2].forEach((r, k) => {
      expect(Math.abs(adjusted.redundancy[k]! - r)).toBeLessThan(0.051);
    });
  });

  // The usual law of levelling is sigma proportional to the root of the length; the page has it wrong.
  it('gives what is right with sigma proportional to the root of the length', () => {
    const adjusted = network(
      lines.map(([from, to, dh, km]) => [from, to, dh, 0.7 * Math.sqrt(km)]),
      fixed,
    );
    expect(rise(adjusted, '1')).toBeCloseTo(104.23476, 6);
    expect(rise(adjusted, '2')).toBeCloseTo(103.48678, 6);
    expect(rise(adjusted, '3')).toBeCloseTo(102.958785, 6);
    expect(adjusted.fit.s0).toBeCloseTo(2.054622, 6);
    [2.19, 2.72, 0.41, 3.23, 1.03, 0.54].forEach((w, k) => {
      expect(Math.abs(adjusted.standardised[k]!)).toBeCloseTo(w, 2);
    });
    expect(adjusted.suspect, '3.23 is short of 3.29').toBe(-1);
  });
});

describe('a network with repeats and five fixed points (Baumann 1995, in the Krumm collection)', () => {
  const lines: [string, string, number, number][] = [
    ['1', '2', 0.6235, 2500],
    ['1', '2', 0.624, 3800],
    ['2', '3', 7.7292, 5000],
    ['5', '4', 8.2021, 3800],
    ['6', '5', 4.4254, 900],
    ['7', '6', 1.0502, 600],
    ['8', '7', 3.7782, 1600],
    ['3', '8', 1.4813, 1800],
    ['9', '8', 5.3523, 2400],
    ['10', '5', 7.4945, 1800],
    ['10', '7', 2.0179, 1000],
    ['10', '11', 0.495, 1300],
    ['8', '11', 2.253, 1000],
    ['13', '11', 11.4908, 1200],
    ['12', '8', 4.7158, 2400],
    ['2', '9', 3.8582, 1600],
    ['9', '12', 0.6374, 3000],
    ['13', '12', 4.5218, 1700],
    ['14', '13', 2.0246, 1200],
    ['14', '13', 2.0251, 1400],
  ];
  const fixed = { 4: 226.578, 6: 213.951, 8: 209.124, 9: 203.771, 14: 197.862 };
  const adjusted = network(
    lines.map(([from, to, dh, metres]) => [from, to, dh, Math.sqrt(metres / 1000)]),
    fixed,
  );

  // The stored answer permutes the corrections of points 10, 11 and 12; these heights were computed apart.
  it('gives the heights, the degrees of freedom and the scatter', () => {
    const heights = {
      1: 199.289235,
      2: 199.912933,
      3: 207.64255,
      5: 218.376526,
      7: 212.900967,
      10: 210.882574,
      11: 211.377328,
      12: 204.40838,
      13: 199.886696,
    };
    for (const [name, metres] of Object.entries(heights)) expect(rise(adjusted, name)).toBeCloseTo(metres, 6);
    expect(adjusted.fit.degreesOfFreedom).toBe(11);
    expect(adjusted.fit.s0).toBeCloseTo(0.442407, 5);
  });

  it('checks the line between two fixed points fully', () => {
    expect(adjusted.redundancy[8]).toBeCloseTo(1, 9);
  });
});

describe('a loop run in both directions (vrmapper.com/gama/1doutput.html)', () => {
  it('gives the published heights, standard deviations and the worst residual', () => {
    const adjusted = network(
      [
        ['1a', '4', -1.225, 5],
        ['4', '3', -0.848, 5],
        ['3', '2', 1.342, 5],
        ['2', '1a', 0.72, 5],
        ['1a', '2', -0.724, 5],
        ['2', '3', -1.335, 5],
        ['3', '4', 0.842, 5],
        ['4', '1a', 1.231, 5],
      ],
      { '1a': 1000 },
    );
    const heights: [string, number, number][] = [
      ['4', 998.77513, 3.1],
      ['3', 997.93325, 3.5],
      ['2', 999.27487, 3.1],
    ];
    for (const [name, metres, sd] of heights) {
      expect(Math.abs(rise(adjusted, name) - metres)).toBeLessThan(6e-6);
      // The page prints a-priori values: 5 mm through the network.
      expect(Math.abs(sdMm(adjusted, name) - sd)).toBeLessThan(0.06);
    }
    expect(adjusted.fit.s0! * 5).toBeCloseTo(5.42, 2);
    const w = Array.from(adjusted.standardised.subarray(0, 8), Math.abs);
    expect(Math.max(...w)).toBeCloseTo(1.676, 3);
    expect(w.indexOf(Math.max(...w))).toBe(5);
  });
});

describe('loop closures (Mittermayer 1971, ZfV 96, 401-410; input only, closures computed by hand)', () => {
  const lines: [string, string, number, number][] = [
    ['1', '2', 86.809, 20.4],
    ['1', '4', 25.714, 18.7],
    ['1', '5', 31.225, 34.8],
    ['2', '3', -71.952, 15],
    ['2', '4', -61.084, 14.2],
    ['2', '6', -44.178, 25.3],
    ['3', '4', 10.847, 12.9],
    ['3', '5', 16.35, 9.8],
    ['5', '6', 11.409, 19.6],
  ];
  const dh = (from: string, to: string) => {
    for (const [a, b, value] of lines) {
      if (a === from && b === to) return value;
      if (a === to && b === from) return -value;
    }
    throw new Error(`${from} ${to}`);
  };
  const loops: [string[], number][] = [
    [['1', '2', '4'], 11],
    [['2', '3', '4'], -21],
    [['1', '2', '3', '5'], -18],
    [['2', '3', '5', '6'], -15],
  ];

  it.each(loops)('loop %s closes by %d mm, and the residuals close it', (loop, closureMm) => {
    const steps = loop.map((from, k): [string, string] => [from, loop[(k + 1) % loop.length]!]);
    const closure = steps.reduce((sum, [from, to]) => sum + dh(from, to), 0);
    expect(closure * 1000).toBeCloseTo(closureMm, 6);
    const adjusted = network(
      lines.map(([from, to, value, km]) => [from, to, value, Math.sqrt(km)]),
      { 1: 0 },
    );
    const corrections = steps.map(([from, to]) => rise(adjusted, to) - rise(adjusted, from) - dh(from, to));
    expect(corrections.reduce((sum, v) => sum + v, 0)).toBeCloseTo(-closure, 9);
  });
});
