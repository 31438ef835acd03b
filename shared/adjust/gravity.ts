/** Mean radius of the earth, mm. */
const earthRadiusMm = 6.371e9;
/** `auto` takes the curve out where it reaches this. */
const worthwhileUm = 1;

/**
 * How far the level surface stands above its own chord over a length, µm: L²/(8R), L in mm.
 * 2 µm at 10 m, 7.8 µm at 20 m.
 */
export function horizonSagittaUm(lengthMm: number): number {
  return (lengthMm * lengthMm * 1000) / (8 * earthRadiusMm);
}

/** Whether the curve of the horizon is to be taken out of tilts between these stations. */
export function gravityAdds(choice: 'auto' | 'on' | 'off', xMm: Float64Array, yMm: Float64Array): boolean {
  if (choice !== 'auto') return choice === 'on';
  return horizonSagittaUm(extentMm(xMm, yMm)) >= worthwhileUm;
}

/** Diagonal of the smallest box, parallel to the axes, that holds all stations, mm. */
export function extentMm(xMm: Float64Array, yMm: Float64Array): number {
  const span = (values: Float64Array) => {
    let low = Number.POSITIVE_INFINITY;
    let high = Number.NEGATIVE_INFINITY;
    for (const value of values) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    }
    return high - low;
  };
  return Math.hypot(span(xMm), span(yMm));
}

/**
 * Height of the level surface at each station over its tangent plane at the middle, µm; never positive,
 * for the level surface falls away to all sides. A level reads heights over this surface, so a truly
 * straight way seems hollow; adding it puts that right.
 */
export function horizonUm(xMm: Float64Array, yMm: Float64Array): Float64Array {
  const mean = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [x0, y0] = [mean(xMm), mean(yMm)];
  return xMm.map((x, k) => (-((x - x0) ** 2 + (yMm[k]! - y0) ** 2) * 1000) / (2 * earthRadiusMm));
}
