import { Matrix, SingularValueDecomposition } from 'ml-matrix';
import type { Sheet } from '../../shared/sheet/sheet.ts';

/**
 * The same least squares in a deliberately different way: a dense matrix written straight from the sheet
 * (units mm, µm/m, µm), columns brought to unit length, and its pseudo-inverse by singular values. Slow,
 * but with nothing in common with the sparse solver.
 */
export interface DenseFit {
  readonly rank: number;
  readonly unknowns: number;
  /** Heights in the datum of least norm, and their covariance. */
  readonly heights: number[];
  readonly covariance: Matrix;
  readonly residual: number[];
  readonly redundancy: number[];
  readonly sumOfSquares: number;
  /** Columns span what the readings cannot see of the heights. */
  readonly unseenHeights: Matrix;
}

export function denseFit(sheet: Sheet): DenseFit {
  const names = Object.keys(sheet.stations);
  const columns = new Map<string, number>(names.map((name, k) => [`height ${name}`, k]));
  const rows: { entries: Map<number, number>; value: number; sigma: number }[] = [];
  const column = (name: string) => {
    if (!columns.has(name)) columns.set(name, columns.size);
    return columns.get(name)!;
  };
  const between = (a: string, b: string) => {
    const [[ax, ay], [bx, by]] = [sheet.stations[a]!, sheet.stations[b]!];
    return Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
  };
  for (const walk of sheet.walks) {
    walk.readings.forEach(([from, to, value], i) => {
      if (value === null) return;
      const slope = (1000 * walk.facing) / between(from, to);
      const entries = new Map([
        [column(`height ${to}`), slope],
        [column(`height ${from}`), -slope],
      ]);
      if (walk.zero !== 'known') entries.set(column(`zero ${walk.zero === 'free' ? walk.id : walk.zero}`), 1);
      if (walk.drift) entries.set(column(`drift ${walk.id}`), i / Math.max(1, walk.readings.length - 1));
      rows.push({ entries, value, sigma: walk.sigma ?? 1 });
    });
  }
  for (const sweep of sheet.sweeps) {
    for (const [station, value] of sweep.readings) {
      if (value === null) continue;
      const entries = new Map([[column(`height ${station}`), sweep.sense as number]]);
      if (sweep.offset === 'free') entries.set(column(`offset ${sweep.id}`), 1);
      if (sweep.slope === 'free') {
        entries.set(column(`slope ${sweep.id}`), between(sweep.readings[0]![0], station) / 1000);
      }
      if (sweep.artefact) entries.set(column(`error ${sweep.artefact} ${station}`), sweep.turned ? -1 : 1);
      rows.push({ entries, value, sigma: sweep.sigma ?? 1 });
    }
  }

  const a = Matrix.zeros(rows.length, columns.size);
  rows.forEach(({ entries, sigma }, i) => {
    for (const [j, value] of entries) a.set(i, j, value / sigma);
  });
  const lengths = Array.from({ length: columns.size }, (_, j) => Math.hypot(...a.getColumn(j)) || 1);
  const scaled = a.clone();
  lengths.forEach((length, j) => {
    scaled.mulColumn(j, 1 / length);
  });
  const svd = new SingularValueDecomposition(scaled, { autoTranspose: true });
  const tolerance = 1e-9 * svd.diagonal[0]!;
  const kept = svd.diagonal.flatMap((value, k) => (value > tolerance ? [k] : []));
  const u = svd.leftSingularVectors;
  const v = svd.rightSingularVectors;
  const root = Matrix.zeros(columns.size, kept.length);
  kept.forEach((k, c) => {
    for (let j = 0; j < columns.size; j++) root.set(j, c, v.get(j, k) / (svd.diagonal[k]! * lengths[j]!));
  });
  const observed = Matrix.columnVector(rows.map(({ value, sigma }) => value / sigma));
  const x = root.mmul(u.subMatrixColumn(kept).transpose().mmul(observed));
  const misfit = a.mmul(x).sub(observed);
  const redundancy = rows.map((_, i) => 1 - kept.reduce((sum, k) => sum + u.get(i, k) ** 2, 0));
  const projector = Matrix.eye(columns.size).sub(
    v.subMatrixColumn(kept).mmul(v.subMatrixColumn(kept).transpose()),
  );
  lengths.forEach((length, j) => {
    projector.mulRow(j, 1 / length);
  });
  const heightRoot = root.subMatrix(0, names.length - 1, 0, Math.max(0, kept.length - 1));
  return {
    rank: kept.length,
    unknowns: columns.size,
    heights: names.map((_, k) => x.get(k, 0)),
    covariance: heightRoot.mmul(heightRoot.transpose()),
    residual: rows.map(({ sigma }, i) => misfit.get(i, 0) * sigma),
    redundancy,
    sumOfSquares: misfit.dot(misfit),
    unseenHeights: projector.subMatrix(0, names.length - 1, 0, columns.size - 1),
  };
}

/** The matrix that takes from heights their least-squares plane (constant and what of x and y is independent). */
export function withoutPlane(sheet: Sheet): Matrix {
  const places = Object.values(sheet.stations);
  const plane = new Matrix(places.map(([x, y]) => [1, x / 1000, y / 1000]));
  const svd = new SingularValueDecomposition(plane, { autoTranspose: true });
  const kept = svd.diagonal.flatMap((value, k) => (value > 1e-9 * svd.diagonal[0]! ? [k] : []));
  const u = svd.leftSingularVectors.subMatrixColumn(kept);
  return Matrix.eye(places.length).sub(u.mmul(u.transpose()));
}
