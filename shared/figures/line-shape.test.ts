import { describe, expect, test } from 'vitest';
import { shapeOfLine } from './line-shape.ts';

function shape(heights: number[], u = 0.1) {
  return shapeOfLine(
    heights.map((_, k) => 100 * k),
    { heightUm: Float64Array.from(heights), uUm: new Float64Array(heights.length).fill(u) },
  );
}

describe('shape words against the line through the ends', () => {
  test.each([
    ['crown', [0, 4, 6, 4, 0]],
    ['hollow', [0, -4, -6, -4, 0]],
    ['s-shaped', [0, 4, 0, -4, 0]],
    ['wavy', [0, 4, -4, 4, -4, 0]],
    ['straight', [0, 0.1, -0.15, 0.1, 0]],
    ['crown', [0, 6, 8, -1, 0]],
    ['hollow', [0, -8, -3, -1, 0.5, 0]],
  ] as const)('%s', (word, heights) => {
    expect(shape([...heights]).word).toBe(word);
  });

  test('what is smaller than twice its own uncertainty has no shape', () => {
    expect(shape([0, 4, 6, 4, 0], 3.1).word).toBe('straight');
    expect(shape([0, 4, 6, 4, 0], 2.9).word).toBe('crown');
  });

  test('the word comes with the heights that justify it', () => {
    expect(shape([0, 6, 8, -1, 0])).toEqual({ word: 'crown', aboveUm: 8, belowUm: 1 });
  });

  test('mirrored metal has the mirrored word', () => {
    expect(shape([0, 8, 3, -0.1, 0]).word).toBe('crown');
    expect(shape([0, -8, -3, 0.1, 0]).word).toBe('hollow');
  });
});
