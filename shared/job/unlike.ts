import type { Setup } from '../session/setup.ts';
import type { Sheet } from '../sheet/schema.ts';
import { unitFactor } from '../units.ts';
import type { JobSurvey } from './survey.ts';

/** Something in which two surveys that are compared were not alike, in words. */
export interface Unlike {
  readonly what: string;
  readonly before: string;
  readonly after: string;
}

/** Temperatures this near to each other are alike, °C. */
const SAME_C = 0.5;

type Compared = Pick<JobSurvey, 'session' | 'sheet'>;

/** Everything known in which `after` was done otherwise than `before`; empty when nothing is. */
export function unlike(before: Compared, after: Compared): Unlike[] {
  return [
    ...rows(geometryOf(before.sheet), geometryOf(after.sheet)),
    ...circumstances(before.session?.setup, after.session?.setup),
  ];
}

function rows(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): Unlike[] {
  const whats = new Set([...before.keys(), ...after.keys()]);
  return [...whats]
    .map((what) => ({ what, before: before.get(what) ?? 'none', after: after.get(what) ?? 'none' }))
    .filter((row) => row.before !== row.after);
}

/** What a sheet itself says of how it was done. */
function geometryOf(sheet: Sheet): Map<string, string> {
  const { stations, walks, sweeps, units, kind } = sheet;
  const toMm = unitFactor('length', units.length);
  const at = (name: string) => stations[name]!;
  const feet = walks.flatMap(({ readings }) =>
    readings.map(([from, to]) =>
      Math.round(toMm * Math.hypot(at(to)[0] - at(from)[0], at(to)[1] - at(from)[1])),
    ),
  );
  const places = Object.entries(stations).map(
    ([name, [x, y]]) => `${name} at ${Math.round(x * toMm)}${y === 0 ? '' : `/${Math.round(y * toMm)}`}`,
  );
  const told = new Map([
    ['kind of survey', kind],
    ['stations, mm', places.join(', ')],
  ]);
  if (walks.length > 0) {
    told.set('foot spacing, mm', distinct(feet));
    told.set('walks', walks.map(({ id, facing }) => `${id}${facing < 0 ? ' turned' : ''}`).join(', '));
  }
  if (sweeps.length > 0) {
    told.set('sweeps', sweeps.map(({ id, turned }) => `${id}${turned ? ' turned' : ''}`).join(', '));
  }
  return told;
}

function distinct(values: readonly number[]): string {
  return [...new Set(values)].sort((a, b) => a - b).join(', ');
}

function circumstances(before: Setup | undefined, after: Setup | undefined): Unlike[] {
  if (!before || !after) {
    const known = (setup: Setup | undefined) => (setup ? 'on record' : 'not known: an imported sheet');
    return [
      { what: 'supports, temperatures, instrument, person', before: known(before), after: known(after) },
    ];
  }
  return [...rows(toldOf(before), toldOf(after)), ...temperatures(before, after)];
}

function toldOf(setup: Setup): Map<string, string> {
  const { name, serial, unit, graduation, sigma, provedOn } = setup.instrument;
  return new Map([
    ['support', setup.support || 'not noted'],
    ['instrument', `${name}${serial ? `, no. ${serial}` : ''}`],
    ['graduation', graduation === 1 ? unit : `${graduation} ${unit}`],
    ['spread of one reading', sigma === undefined ? 'not proved' : `${sigma} ${unit}`],
    ['instrument proved', provedOn ?? 'not proved'],
    ['person', setup.operator || 'not noted'],
  ]);
}

function temperatures(before: Setup, after: Setup): Unlike[] {
  return (['partC', 'airC'] as const).flatMap((which) => {
    const [b, a] = [before[which], after[which]];
    if (b === a || (b !== undefined && a !== undefined && Math.abs(a - b) < SAME_C)) return [];
    return [{ what: which === 'partC' ? 'iron' : 'air', before: degrees(b), after: degrees(a) }];
  });
}

function degrees(value: number | undefined): string {
  return value === undefined ? 'not noted' : `${value} °C`;
}
