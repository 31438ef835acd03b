/**
 * Whether a sum of squares of `degreesOfFreedom` unit normal deviates is no larger than in 95 of 100 cases.
 * P(a, x) is the regularised incomplete gamma function, by series below x = a + 1 and by continued
 * fraction above (NIST Digital Library of Mathematical Functions 8.7.1 and 8.9.2).
 */
export function chiSquareOk(sumOfSquares: number, degreesOfFreedom: number): boolean {
  return chiSquareProbability(sumOfSquares, degreesOfFreedom) <= 0.95;
}

/** Probability that χ² with so many degrees of freedom is at most `value`. */
export function chiSquareProbability(value: number, degreesOfFreedom: number): number {
  if (value <= 0) return 0;
  const a = degreesOfFreedom / 2;
  const x = value / 2;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? front * series(a, x) : 1 - front * fraction(a, x);
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; term > sum * 1e-16; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** Lentz's evaluation of the continued fraction of Γ(a, x)·eˣ·x⁻ᵃ. */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Number.MAX_VALUE;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < 1_000_000; n++) {
    const an = n * (a - n);
    b += 2;
    d = 1 / (b + an * d);
    c = b + an / c;
    const step = c * d;
    value *= step;
    if (Math.abs(step - 1) < 1e-15) break;
  }
  return value;
}

/** ln Γ(a), a > 0: Stirling's series after shifting a above 10. */
function logGamma(a: number): number {
  let shift = 0;
  let x = a;
  for (; x < 10; x++) shift += Math.log(x);
  const y = 1 / (x * x);
  const correction = (1 / 12 - y * (1 / 360 - y * (1 / 1260 - y * (1 / 1680 - y / 1188)))) / x;
  return (x - 0.5) * Math.log(x) - x + 0.5 * Math.log(2 * Math.PI) + correction - shift;
}
