import { WayscribeError } from '../errors.ts';
import { unitFactor } from '../units.ts';
import type { Sheet } from './schema.ts';

/** Limits that keep the arithmetic far from overflow, in internal units (mm, µm/m, µm). */
const maxReading = 1e9;
const minSigma = 1e-9;
const minBaseMm = 1e-6;

/** Proves that a sheet of right form also makes sense; throws at the first place that does not. */
export function checkSheet(sheet: Sheet): void {
  checkStations(sheet);
  checkLines(sheet);
  checkIds(sheet);
  checkWalks(sheet);
  checkSweeps(sheet);
  checkArtefacts(sheet);
  checkKind(sheet);
}

function invalid(place: string, message: string, remedy: string): WayscribeError {
  return new WayscribeError('sheet.invalid', place, message, remedy);
}

function checkStations(sheet: Sheet): void {
  const names = Object.keys(sheet.stations);
  if (names.length < 2) throw invalid('stations', 'a survey has at least two stations', 'name them all');
}

function checkStation(sheet: Sheet, place: string, name: string): [xMm: number, yMm: number] {
  if (!Object.hasOwn(sheet.stations, name)) {
    const some = Object.keys(sheet.stations);
    const list = some.slice(0, 5).join(', ') + (some.length > 5 ? ' …' : '');
    throw new WayscribeError(
      'sheet.unknownStation',
      place,
      `station "${name}" is not in stations`,
      `add it there or name one of ${list}`,
    );
  }
  const factor = unitFactor('length', sheet.units.length);
  const [x, y] = sheet.stations[name]!;
  return [x * factor, y * factor];
}

function distanceMm(a: [number, number], b: [number, number]): number {
  return Math.hypot(b[0] - a[0], b[1] - a[1]);
}

type Place = [xMm: number, yMm: number];

/** Of the connection a → b with that of c → d. */
function dot(a: Place, b: Place, c: Place, d: Place): number {
  return (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1]);
}

function checkLines(sheet: Sheet): void {
  for (const [name, stations] of Object.entries(sheet.lines)) {
    const seen = new Set<string>();
    stations.forEach((station, index) => {
      const place = `lines.${name}[${index}]`;
      checkStation(sheet, place, station);
      if (seen.has(station))
        throw invalid(place, `station "${station}" is in this line twice`, 'name it once');
      seen.add(station);
    });
    const [first, last] = [stations[0]!, stations.at(-1)!].map((end) => checkStation(sheet, '', end));
    if (distanceMm(first!, last!) < minBaseMm) {
      throw invalid(`lines.${name}`, 'the line begins and ends at one place', 'mend the coordinates');
    }
  }
}

function checkIds(sheet: Sheet): void {
  const seen = new Set<string>();
  for (const [field, groups] of [['walks', sheet.walks] as const, ['sweeps', sheet.sweeps] as const]) {
    groups.forEach(({ id }, index) => {
      if (seen.has(id))
        throw invalid(`${field}[${index}].id`, `"${id}" is used twice`, 'give each its own id');
      seen.add(id);
    });
  }
  const ownZeros = new Set(sheet.walks.filter(({ zero }) => zero === 'free').map(({ id }) => id));
  sheet.walks.forEach(({ zero }, index) => {
    if (!ownZeros.has(zero)) return;
    throw invalid(
      `walks[${index}].zero`,
      `"${zero}" is a walk whose zero is its own`,
      `write "zero": "${zero}" in that walk also, or name the shared zero otherwise`,
    );
  });
  const taken = [...sheet.walks, ...sheet.sweeps].some(({ readings }) =>
    readings.some((reading) => reading.at(-1) !== null),
  );
  if (!taken) throw invalid('walks', 'the sheet holds no reading', 'write at least one');
}

function checkSigma(place: string, sigma: number | undefined, factor: number): void {
  if (sigma === undefined || (sigma * factor >= minSigma && sigma * factor <= maxReading)) return;
  throw invalid(`${place}.sigma`, `${sigma} is out of range`, 'write between 1e-9 and 1e9 µm/m or µm');
}

function checkReading(place: string, value: number | null, factor: number): void {
  if (value === null || Math.abs(value * factor) <= maxReading) return;
  throw invalid(
    place,
    `the reading ${value} lies beyond 1e9 µm/m or µm`,
    'mend it, or write null to skip it',
  );
}

function checkWalks(sheet: Sheet): void {
  const factor = unitFactor('tilt', sheet.units.tilt);
  sheet.walks.forEach(({ sigma, readings }, walk) => {
    checkSigma(`walks[${walk}]`, sigma, factor);
    readings.forEach(([from, to, value], index) => {
      const place = `walks[${walk}].readings[${index}]`;
      const feet = [from, to].map((foot) => checkStation(sheet, place, foot));
      if (distanceMm(feet[0]!, feet[1]!) < minBaseMm) {
        throw invalid(
          place,
          `both feet stand at one place ("${from}" and "${to}")`,
          'two feet stand at two places',
        );
      }
      checkReading(place, value, factor);
    });
  });
}

function checkSweeps(sheet: Sheet): void {
  const factor = unitFactor('height', sheet.units.height);
  sheet.sweeps.forEach(({ sigma, readings }, sweep) => {
    checkSigma(`sweeps[${sweep}]`, sigma, factor);
    readings.forEach(([station, value], index) => {
      const place = `sweeps[${sweep}].readings[${index}]`;
      checkStation(sheet, place, station);
      checkReading(place, value, factor);
    });
  });
}

function checkArtefacts(sheet: Sheet): void {
  sheet.sweeps.forEach(({ artefact, turned }, index) => {
    const place = `sweeps[${index}]`;
    if (artefact === undefined) {
      if (!turned) return;
      throw invalid(`${place}.turned`, 'nothing is named that was turned', 'name the artefact');
    }
    if (sheet.sweeps.some((other) => other.artefact === artefact && other.turned !== turned)) return;
    throw invalid(
      `${place}.artefact`,
      `"${artefact}" was swept only ${turned ? 'turned' : 'unturned'}`,
      `add a sweep with "turned": ${!turned}, or leave the artefact out and trust it as it is`,
    );
  });
}

function checkKind(sheet: Sheet): void {
  const lines = Object.entries(sheet.lines);
  const { kind } = sheet;
  if (kind === 'bed') {
    if (lines.length < 2) throw invalid('lines', 'a bed has at least two lines', 'name both ways');
    // JSON moves such names in front of the others, and which way is the first one decides on the sense of a wind.
    const number = lines.find(([name]) => /^(0|[1-9]\d*)$/.test(name));
    if (number) {
      throw invalid(
        `lines.${number[0]}`,
        'a line of a bed that is named by a whole number does not keep its place among the lines',
        `name it otherwise, as way ${number[0]}`,
      );
    }
    const [[, first], [second, other]] = lines as [(typeof lines)[0], (typeof lines)[0]];
    if (first.length !== other.length) {
      throw invalid(
        `lines.${second}`,
        `this line has ${other.length} stations and the first one ${first.length}`,
        'station k of one line faces station k of the other',
      );
    }
    const [a, b] = [first, other].map((stations) =>
      [stations[0]!, stations.at(-1)!].map((end) => checkStation(sheet, '', end)),
    );
    if (dot(a![0]!, a![1]!, b![0]!, b![1]!) <= 0) {
      throw invalid(
        `lines.${second}`,
        'this line does not run the way the first one does',
        'name the stations of both from the same end',
      );
    }
  } else if (kind !== 'plate' && kind !== 'network' && lines.length === 0) {
    throw invalid('lines', `a ${kind} has at least one line`, 'name the stations of the line in order');
  }
  if (kind === 'repeat' && sheet.target) {
    throw invalid('target', 'repeat readings tell nothing of what to scrape', 'take it out');
  }
  if (kind === 'dovetail' && !sheet.pins) {
    throw invalid('pins', 'this is missing', 'a dovetail is measured over pins: write their diameter');
  }
  if (kind !== 'dovetail' && sheet.pins) {
    throw invalid('pins', `pins do not belong to a ${kind}`, 'take them out');
  }
}
