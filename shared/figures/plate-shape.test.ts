import { describe, expect, test } from 'vitest';
import { adjustedHeights } from '../../tests/tools/adjusted-heights.ts';
import { areaOf } from './area.ts';
import { planeReference } from './plane-reference.ts';
import { plateShapeSentence, shapeOfPlate } from './plate-shape.ts';
import { departuresFrom } from './reference.ts';

/** A grid of 7 × 5 with x and y of −1 … 1. */
function shape(height: (x: number, y: number) => number, u = 0.1) {
  const places = Array.from({ length: 35 }, (_, k) => ({ x: (k % 7) / 3 - 1, y: Math.floor(k / 7) / 2 - 1 }));
  const adjusted = adjustedHeights({
    xMm: places.map(({ x }) => 300 * x),
    yMm: places.map(({ y }) => 200 * y),
    heightUm: places.map(({ x, y }) => height(x, y)),
    covarianceUm2: places.map((_, i) => places.map((__, j) => (i === j ? u * u : 0))),
  });
  const area = areaOf(adjusted);
  return shapeOfPlate(adjusted, area, departuresFrom(adjusted, planeReference('leastSquares', area)));
}

const onEdge = (x: number, y: number) => Math.max(Math.abs(x), Math.abs(y)) > 0.99;

describe('shape words of plates', () => {
  test.each([
    ['dome', (x: number, y: number) => -8 * x * x - 6 * y * y],
    ['dish', (x: number, y: number) => 8 * x * x + 6 * y * y],
    ['ridge', (x: number, y: number) => -8 * x * x - y * y],
    ['trough', (_: number, y: number) => 8 * y * y],
    ['saddle', (x: number, y: number) => 8 * x * x - 7 * y * y],
    ['wind', (x: number, y: number) => 6 * x * y + x * x],
    ['edge droop', (x: number, y: number) => (onEdge(x, y) ? -5 : 0)],
    ['raised edge', (x: number, y: number) => (onEdge(x, y) ? 5 : 0.3 * x * x)],
    ['uneven', (x: number, y: number) => 5 * Math.sin(9 * x + 7 * y)],
    ['flat', (x: number, y: number) => 0.15 * x * y],
    ['dish', (x: number, y: number) => 8 * x * x + 6 * y * y + 100 * x - 40 * y],
  ] as const)('%s', (word, height) => {
    expect(shape(height).word).toBe(word);
  });

  test('the numbers that justify the word are those of the surface', () => {
    const bent = shape((x, y) => -8 * x * x - 6 * y * y + 2 * x * y);
    expect(bent.bendAlongUm).toBeCloseTo(8, 9);
    expect(bent.bendAcrossUm).toBeCloseTo(6, 9);
    expect(bent.windUm).toBeCloseTo(4, 9);
    expect(bent.bentShare).toBeCloseTo(1, 9);
    expect(plateShapeSentence(bent)).toBe(
      'Shape: dome; the middle stands 8.0 µm HIGH along and 6.0 µm HIGH across, the corners wind by 4.0 µm.',
    );
    const drooping = shape((x, y) => (onEdge(x, y) ? -5 : 0));
    expect(drooping.edgeUm).toBeCloseTo(-5, 9);
    expect(drooping.edgeShare).toBeCloseTo(1, 9);
  });

  test('a shape below its own uncertainty is none', () => {
    expect(shape((x, y) => 8 * x * x + 6 * y * y, 5).word).toBe('flat');
  });
});
