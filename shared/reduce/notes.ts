import type { Adjustment } from '../adjust/adjust.ts';
import { leastFreedomToScale } from '../adjust/fit.ts';
import { extentMm, horizonSagittaUm } from '../adjust/gravity.ts';
import { uncheckedRedundancy } from '../adjust/suspect.ts';
import type { Sheet } from '../sheet/schema.ts';

/** What was assumed, scaled, corrected and not checked, in plain sentences. Nothing is done in silence. */
export function notesOf(sheet: Sheet, adjustment: Adjustment): string[] {
  return [
    ...sigmaNotes(sheet, adjustment),
    ...gravityNotes(sheet, adjustment),
    ...skippedNotes(sheet),
    ...midLineNotes(sheet),
    ...uncheckedNotes(sheet, adjustment),
    ...suspectNotes(sheet, adjustment),
    ...zeroNotes(sheet, adjustment),
  ];
}

function sigmaNotes(sheet: Sheet, { fit }: Adjustment): string[] {
  const { units } = sheet;
  const assumed = [
    ...sheet.walks.filter(({ sigma }) => sigma === undefined).map(({ id }) => [id, units.tilt] as const),
    ...sheet.sweeps.filter(({ sigma }) => sigma === undefined).map(({ id }) => [id, units.height] as const),
  ];
  const notes: string[] = [];
  if (assumed.length > 0) {
    const unit = [
      ...new Set(assumed.map(([, each]) => `1 ${each.replace(/^um|^u(?=in)/, (u) => u.replace('u', 'µ'))}`)),
    ].join(' and ');
    const whole = assumed.length === sheet.walks.length + sheet.sweeps.length;
    const of = whole ? 'one reading' : `one reading of ${listed(assumed.map(([id]) => `"${id}"`))}`;
    notes.push(`The standard deviation of ${of} was not given; ${unit} was assumed.`);
    if (fit.sigmaScaled && fit.s0! < 1e-9) {
      notes.push('The readings agree to the last digit, so their scatter says nothing of their uncertainty.');
    } else if (fit.sigmaScaled) {
      notes.push(
        `All uncertainties were scaled by s0 = ${brief(fit.s0!)}, as the readings scatter with ${fit.degreesOfFreedom} degrees of freedom.`,
      );
    } else {
      const why = whole
        ? `there are fewer than ${leastFreedomToScale} degrees of freedom to tell`
        : 'some standard deviations are known';
      notes.push(`The uncertainties rest on that assumption and were not scaled: ${why}.`);
    }
  }
  if (fit.chiSquareOk === false) {
    notes.push(
      fit.sigmaScaled
        ? `The readings scatter ${brief(fit.s0!)} times as much as was assumed.`
        : `The readings scatter ${brief(fit.s0!)} times as much as their standard deviation says (χ² test, 95 %): there is a blunder among them, or it was taken too small. The uncertainties were not scaled.`,
    );
  }
  return notes;
}

function gravityNotes(sheet: Sheet, { observations }: Adjustment): string[] {
  if (!observations.gravityCorrected) return [];
  const length = extentMm(observations.xMm, observations.yMm);
  const reason = sheet.gravityCurvature === 'auto' ? 'reaches 1 µm here' : 'was asked for';
  return [
    `The curve of the horizon was taken out of the tilts: over ${brief(length / 1000)} m it is ${brief(horizonSagittaUm(length))} µm, and it ${reason}.`,
  ];
}

function skippedNotes(sheet: Sheet): string[] {
  const skipped = [...sheet.walks, ...sheet.sweeps].reduce(
    (sum, { readings }) => sum + readings.filter((reading) => reading.at(-1) === null).length,
    0,
  );
  if (skipped === 0) return [];
  return [skipped === 1 ? 'One reading was skipped.' : `${skipped} readings were skipped.`];
}

/** Sweeps of free slope whose first station has others on both sides. */
function midLineNotes({ sweeps, stations }: Sheet): string[] {
  const begun = sweeps.filter(({ slope, readings }) => {
    const [x, y] = stations[readings[0]?.[0] ?? ''] ?? [0, 0];
    const ways = readings
      .map(([station]) => stations[station]!)
      .map(([sx, sy]) => ({ x: sx - x, y: sy - y }));
    let far = { x: 0, y: 0 };
    for (const way of ways) if (Math.hypot(way.x, way.y) > Math.hypot(far.x, far.y)) far = way;
    return slope === 'free' && ways.some((way) => way.x * far.x + way.y * far.y < 0);
  });
  if (begun.length === 0) return [];
  const names = listed(begun.map(({ id }) => `"${id}"`));
  return [
    `The slope of ${names} runs away from its first station to both sides: begin a sweep at an end of the line.`,
  ];
}

function uncheckedNotes(sheet: Sheet, { redundancy, observations }: Adjustment): string[] {
  const unchecked: number[] = [];
  redundancy.forEach((r, row) => {
    if (r < uncheckedRedundancy) unchecked.push(row);
  });
  if (unchecked.length === 0) return [];
  if (unchecked.length === observations.count) {
    return [
      'Nothing checks these readings: a wrong one would not show. Walk back, sweep again, or add readings that cross.',
    ];
  }
  const named = unchecked.slice(0, 5).map((row) => readingName(sheet, { observations }, row));
  return [
    `Nothing checks these readings: ${named.join('; ')}${unchecked.length > 5 ? ` and ${unchecked.length - 5} more` : ''}.`,
  ];
}

function suspectNotes(sheet: Sheet, adjustment: Adjustment): string[] {
  const { suspect, suspectTies, residual, redundancy, observations } = adjustment;
  if (suspect < 0) return [];
  const error = -residual[suspect]! / redundancy[suspect]!;
  const unit = observations.group[suspect]! < sheet.walks.length ? 'µm/m' : 'µm';
  const amount = `${brief(Math.abs(error))} ${unit} ${error > 0 ? 'more' : 'less'}`;
  const notes = [
    `${capital(readingName(sheet, adjustment, suspect))} reads ${amount} than its neighbours agree with: wipe, repeat.`,
  ];
  if (suspectTies.length > 0) {
    const others = suspectTies.slice(0, 3).map((row) => readingName(sheet, adjustment, row));
    notes.push(`It may as well be ${others.join(' or ')}: the readings check only each other there.`);
  }
  return notes;
}

function zeroNotes(sheet: Sheet, { freeZeros }: Adjustment): string[] {
  if (freeZeros.length === 0) return [];
  const names = listed(freeZeros.map((name) => `"${name}"`));
  return [
    `The zero of ${names} can't be told from a tilt of the whole surface: how level it lies stays open, its shape does not. ${
      isTurned(sheet, freeZeros)
        ? 'The level was turned end for end, but each walk has a zero of its own: if it stayed the same, naming it as shared would tell.'
        : 'A walk that shares this zero with the level turned end for end would tell.'
    }`,
  ];
}

/** Whether two walks with zeros of their own over the same feet were made with the level either way round. */
function isTurned({ walks }: Sheet, freeZeros: readonly string[]): boolean {
  const facings = new Map<string, number>();
  return walks
    .filter(({ id, zero }) => freeZeros.includes(zero === 'free' ? id : zero))
    .some(({ facing, readings }) =>
      readings.some(([from, to]) => {
        const feet = from < to ? `${from}\n${to}` : `${to}\n${from}`;
        const before = facings.get(feet) ?? facing;
        facings.set(feet, before);
        return before !== facing;
      }),
    );
}

function readingName(sheet: Sheet, { observations }: Pick<Adjustment, 'observations'>, row: number): string {
  const group = observations.group[row]!;
  const index = observations.reading[row]!;
  const walk = sheet.walks[group];
  if (walk) {
    const [from, to] = walk.readings[index]!;
    return `station ${from} → ${to}, walk "${walk.id}"`;
  }
  const sweep = sheet.sweeps[group - sheet.walks.length]!;
  return `station ${sweep.readings[index]![0]}, sweep "${sweep.id}"`;
}

function listed(names: readonly string[]): string {
  if (names.length > 6) return `${names.slice(0, 6).join(', ')} and ${names.length - 6} more`;
  return names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Two significant digits, for a sentence. */
function brief(value: number): string {
  return String(Number(value.toPrecision(value >= 10 && value < 1000 ? 3 : 2)));
}
