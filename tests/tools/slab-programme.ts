import loadHighs from 'highs';

/** Points of a slab programme: x, y and h of about ±1. */
export interface Points {
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly h: ArrayLike<number>;
}

export type SlabSolver = (points: Points, aim: { mean: number; most: number }) => number;

/**
 * The least of mean·(mean height above a plane) + most·(greatest height above it), over all planes that
 * lie nowhere above the points, by the linear-programme solver HiGHS. The value is taken from the dual,
 * which is exact for the basis found; tolerances are the tightest the solver allows.
 */
export async function slabSolver(): Promise<SlabSolver> {
  const highs = await loadHighs();
  return (points, aim) => {
    const answer = highs.solve(slabProgramme(points, aim), {
      primal_feasibility_tolerance: 1e-10,
      dual_feasibility_tolerance: 1e-10,
    });
    if (answer.Status !== 'Optimal') throw new Error(`HiGHS: ${answer.Status}`);
    let value = 0;
    let meanHeight = 0;
    for (let k = 0; k < points.h.length; k++) {
      const upper = answer.Rows[2 * k] as { Dual: number };
      const lower = answer.Rows[2 * k + 1] as { Dual: number };
      value += (upper.Dual + lower.Dual) * points.h[k]!;
      meanHeight += points.h[k]! / points.h.length;
    }
    return value + aim.mean * meanHeight;
  };
}

/** The programme in CPLEX LP format: a + b·x + c·y below all points, a + b·x + c·y + m above them. */
function slabProgramme({ x, y, h }: Points, aim: { mean: number; most: number }): string {
  const n = h.length;
  const meanOf = (values: ArrayLike<number>) => {
    let sum = 0;
    for (let k = 0; k < n; k++) sum += values[k]!;
    return sum / n;
  };
  const plane = (k: number) => `1 a ${term(x[k]!, 'b')} ${term(y[k]!, 'c')}`;
  const lines = ['Minimize'];
  const { mean } = aim;
  lines.push(
    ` obj: ${mean === 0 ? '' : `${term(-mean, 'a')} ${term(-mean * meanOf(x), 'b')} ${term(-mean * meanOf(y), 'c')}`} ${term(aim.most, 'm')}`,
  );
  lines.push('Subject To');
  for (let k = 0; k < n; k++) {
    lines.push(` u${k}: ${plane(k)} + 1 m >= ${h[k]!}`);
    lines.push(` l${k}: ${plane(k)} <= ${h[k]!}`);
  }
  lines.push('Bounds', ' a free', ' b free', ' c free', ' m free', 'End');
  return lines.join('\n');
}

function term(factor: number, name: string): string {
  return `${factor < 0 ? '-' : '+'} ${Math.abs(factor)} ${name}`;
}
