/** One reading of a walk as it stands on paper: slope in µm/m, feet `baseMm` apart; null where not read yet. */
export interface WalkStep {
  readonly from: string;
  readonly to: string;
  readonly readingUmPerM: number | null;
  readonly baseMm: number;
}

/** One row of the working. Heights belong to the station `to`; µm, plus = proud of the end line. */
export interface HandRow {
  readonly from: string;
  readonly to: string;
  readonly readingUmPerM: number;
  readonly baseMm: number;
  /** reading × base */
  readonly riseUm: number;
  /** running sum of the rises, from 0 at the first station */
  readonly sumUm: number;
  /** what the line from the first to the last station has risen here */
  readonly endLineUm: number;
  /** sum − end line */
  readonly heightUm: number;
}

/** The working of one walk: its rows, and whether all steps have been read. */
export interface HandColumns {
  readonly first: string;
  readonly rows: readonly HandRow[];
  readonly complete: boolean;
}

/**
 * The arithmetic of one walk as done by hand: reading × base, running sum, line through the ends taken
 * off. A walk in progress gives the columns as far as they go, up to the first step that is not read
 * or does not start where the last one ended, against the line through the ends of that part.
 * `facing` −1: the level stood turned end for end, so its readings count the other way.
 * One walk alone: no closing, no second walk, no uncertainty. The usual method of workshop handbooks
 * (common practice, no source).
 */
export function handColumns(steps: readonly WalkStep[], facing: 1 | -1 = 1): HandColumns {
  const taken: { step: WalkStep; reading: number; riseUm: number; sumUm: number; atMm: number }[] = [];
  let sumUm = 0;
  let atMm = 0;
  for (const step of steps) {
    const previous = taken.at(-1)?.step.to ?? step.from;
    if (step.readingUmPerM === null || step.from !== previous) break;
    const reading = facing * step.readingUmPerM;
    const riseUm = (reading * step.baseMm) / 1000;
    sumUm += riseUm;
    atMm += step.baseMm;
    taken.push({ step, reading, riseUm, sumUm, atMm });
  }
  const rows = taken.map((row): HandRow => {
    const endLineUm = (sumUm * row.atMm) / atMm;
    return {
      from: row.step.from,
      to: row.step.to,
      readingUmPerM: row.reading,
      baseMm: row.step.baseMm,
      riseUm: row.riseUm,
      sumUm: row.sumUm,
      endLineUm,
      heightUm: row.sumUm - endLineUm,
    };
  });
  return { first: steps[0]?.from ?? '', rows, complete: taken.length > 0 && taken.length === steps.length };
}
