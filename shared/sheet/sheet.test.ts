import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { isWayscribeError, type WayscribeError } from '../errors.ts';
import { parseSheet, sheetSchema } from './sheet.ts';

type Tree = Record<string, unknown>;

/** A small way, as JSON would read; each case below changes something in it. */
function way(changes: Tree = {}): Tree {
  const sheet: Tree = {
    sheet: 1,
    kind: 'way',
    stations: { F0: [0, 0], F1: [200, 0], F2: [400, 0] },
    lines: { front: ['F0', 'F1', 'F2'] },
    walks: [
      {
        id: 'out',
        readings: [
          ['F0', 'F1', 12.5],
          ['F1', 'F2', -3],
        ],
      },
    ],
    sweeps: [
      {
        id: 's1',
        readings: [
          ['F0', 0],
          ['F1', 1.2],
        ],
      },
    ],
  };
  for (const [path, value] of Object.entries(changes)) put(sheet, path.split('.'), value);
  return sheet;
}

function put(tree: Tree, [first = '', ...rest]: string[], value: unknown): void {
  if (rest.length > 0) put(tree[first] as Tree, rest, value);
  else if (value === undefined) delete tree[first];
  else tree[first] = value;
}

function failure(text: string): WayscribeError {
  try {
    parseSheet(text);
  } catch (error) {
    if (isWayscribeError(error)) return error;
    throw error;
  }
  throw new Error('it was taken for good');
}

const spoiled: [what: string, place: string, says: string, changes: Tree][] = [
  [
    'an unknown station in a walk',
    'walks[0].readings[1]',
    '"F9" is not in stations',
    { 'walks.0.readings.1.1': 'F9' },
  ],
  [
    'an unknown station in a sweep',
    'sweeps[0].readings[0]',
    '"X" is not in stations',
    { 'sweeps.0.readings.0.0': 'X' },
  ],
  [
    'a station named as the prototype',
    'sweeps[0].readings[0]',
    'is not in',
    { 'sweeps.0.readings.0.0': '__proto__' },
  ],
  ['an unknown station in a line', 'lines.front[2]', '"F7" is not in stations', { 'lines.front.2': 'F7' }],
  ['a station twice in a line', 'lines.front[2]', 'twice', { 'lines.front.2': 'F0' }],
  ['a line that ends where it begins', 'lines.front', 'one place', { 'stations.F2': [0, 0] }],
  ['a line of one station', 'lines.front', 'at least 2', { 'lines.front': ['F0'] }],
  ['two feet at one place', 'walks[0].readings[0]', 'one place', { 'stations.F1': [0, 0] }],
  ['both feet on one station', 'walks[0].readings[0]', 'one place', { 'walks.0.readings.0.1': 'F0' }],
  ['a reading as text', 'walks[0].readings[0][2]', 'a finite number', { 'walks.0.readings.0.2': '12,5' }],
  ['a reading out of range', 'walks[0].readings[0]', 'beyond 1e9', { 'walks.0.readings.0.2': 2e9 }],
  ['a height out of range', 'sweeps[0].readings[1]', 'beyond 1e9', { 'sweeps.0.readings.1.1': -1.1e9 }],
  [
    'a reading with too few parts',
    'walks[0].readings[0]',
    '2 entries',
    { 'walks.0.readings.0': ['F0', 'F1'] },
  ],
  ['a coordinate out of range', 'stations.F1[0]', 'out of range', { 'stations.F1': [1e10, 0] }],
  ['a station without y', 'stations.F1', '1 entries', { 'stations.F1': [200] }],
  ['a kind that is none', 'kind', '"lathe"', { kind: 'lathe' }],
  ['a version to come', 'sheet', '2 is not possible', { sheet: 2 }],
  ['a field that is none', '', '"walk" is not a field', { walk: [] }],
  ['a field that is none in a walk', 'walks[0]', '"drifts"', { 'walks.0.drifts': true }],
  ['a facing that is none', 'walks[0].facing', '1 or -1', { 'walks.0.facing': 0 }],
  ['a sigma of nothing', 'walks[0].sigma', 'more than 0', { 'walks.0.sigma': 0 }],
  ['a sigma too small to weigh', 'walks[0].sigma', 'out of range', { 'walks.0.sigma': 1e-200 }],
  ['a unit that is none', 'units.tilt', '"um"', { units: { tilt: 'um' } }],
  ['an id used twice', 'sweeps[0].id', '"out" is used twice', { 'sweeps.0.id': 'out' }],
  [
    'a shared zero named as a walk',
    'walks[1].zero',
    'its own',
    { 'walks.1': { id: 'b', zero: 'out', readings: [] } },
  ],
  ['an artefact that was never turned', 'sweeps[0].artefact', 'unturned', { 'sweeps.0.artefact': 'bar' }],
  ['nothing named that was turned', 'sweeps[0].turned', 'name the artefact', { 'sweeps.0.turned': true }],
  ['one station', 'stations', 'at least two', { stations: { F0: [0, 0] } }],
  ['no reading', 'walks', 'no reading', { walks: [], sweeps: [] }],
  [
    'nothing but skipped readings',
    'walks',
    'no reading',
    { sweeps: [], 'walks.0.readings': [['F0', 'F1', null]] },
  ],
  ['a way without a line', 'lines', 'at least one line', { lines: {} }],
  ['a bed of one line', 'lines', 'two lines', { kind: 'bed' }],
  [
    'a bed whose lines run against each other',
    'lines.rear',
    'from the same end',
    { kind: 'bed', 'lines.rear': ['F2', 'F1', 'F0'] },
  ],
  [
    'a bed whose lines would change places',
    'lines.1',
    'does not keep its place',
    { kind: 'bed', lines: { 2: ['F0', 'F1'], 1: ['F1', 'F2'] } },
  ],
  ['a bed of unlike lines', 'lines.rear', '2 stations', { kind: 'bed', 'lines.rear': ['F0', 'F2'] }],
  ['a dovetail without pins', 'pins', 'missing', { kind: 'dovetail' }],
  ['pins on a way', 'pins', 'do not belong', { pins: { diameter: 10, angleDeg: 55, form: 'male' } }],
  [
    'a limit below nothing',
    'limits[0].max',
    'at least 0',
    { limits: [{ figure: 'front.straightness', max: -1 }] },
  ],
  ['a bite of nothing', 'target.biteUm', 'more than 0', { target: { biteUm: 0 } }],
  ['half a pass', 'target.stopPasses', 'whole number', { target: { stopPasses: 0.5 } }],
  ['walks that are no list', 'walks', 'a list', { walks: {} }],
  ['stations missing', 'stations', 'missing', { stations: undefined }],
  ['a name of two lines', 'stations.F?', 'this name', { stations: { 'F\n': [0, 0], F1: [1, 0] } }],
  ['an id of two lines', 'walks[0].id', 'line break', { 'walks.0.id': 'o\nut' }],
  ['a field of two lines', '', 'is not a field', { 'a\nb': 1 }],
];

describe('a sheet that makes no sense', () => {
  it.each(spoiled)('%s is refused at %s', (_, place, says, changes) => {
    const error = failure(JSON.stringify(way(changes)));
    expect(error.place).toBe(place);
    expect(error.message).toContain(says);
    expect(error.message).not.toMatch(/\n|undefined/);
  });

  it('names the place, what is wrong and what would be right in one line', () => {
    const sheet = way({ 'walks.0.readings.2': ['F0', 'F2', 1], 'walks.0.readings.3': ['F2', 'F9', 1] });
    expect(failure(JSON.stringify(sheet)).message).toBe(
      'walks[0].readings[3]: station "F9" is not in stations; add it there or name one of F0, F1, F2',
    );
  });

  it.each(['', 'hello', '[1, 2]', '42', 'null', '{"a": 1}', '{"event":"take"}\n{"event":"end"}'])(
    'a file that is no sheet says so: %j',
    (text) => {
      expect(failure(text).code).toBe('sheet.notASheet');
    },
  );

  it.each(['stations', 'lines'])('%s named as no object can hold it are refused', (field) => {
    const text = JSON.stringify(way()).replace(`"${field}":{`, `"${field}":{"__proto__":[0,0],`);
    expect(failure(text).place).toBe(`${field}.__proto__`);
  });

  it('broken JSON is told in one line', () => {
    expect(failure('{"sheet": 1,\n "kind": \n}\n').message).toMatch(/^this is not JSON: [^\n]+$/);
  });

  it('a number that JSON cannot hold is refused', () => {
    const error = failure(JSON.stringify(way()).replace('12.5', '1e999'));
    expect(error.place).toBe('walks[0].readings[0][2]');
  });

  it('a million readings are the limit', () => {
    const sheet = way({ 'walks.0.readings': Array.from({ length: 1_000_001 }, () => 0) });
    expect(failure(JSON.stringify(sheet)).code).toBe('sheet.tooLarge');
  });

  it('64 MiB are the limit', () => {
    expect(failure(' '.repeat(64 * 1024 * 1024 + 1)).message).toContain('64 MiB');
  });
});

describe('a good sheet', () => {
  it('has its defaults filled in', () => {
    const sheet = parseSheet(JSON.stringify(way()));
    expect(sheet.units).toEqual({ length: 'mm', tilt: 'um/m', height: 'um' });
    expect(sheet.walks[0]).toMatchObject({ zero: 'free', facing: 1, drift: false });
    expect(sheet.sweeps[0]).toMatchObject({ offset: 'free', slope: 'free', sense: 1, turned: false });
    expect(sheet.gravityCurvature).toBe('auto');
  });

  it('may begin with a byte order mark', () => {
    expect(parseSheet(`\uFEFF ${JSON.stringify(way())}`).kind).toBe('way');
  });

  it('takes sizes over pins as known unless it says otherwise', () => {
    const sheet = {
      ...way(),
      kind: 'dovetail',
      walks: [],
      pins: { diameter: 10, angleDeg: 55, form: 'male' },
    };
    expect(parseSheet(JSON.stringify(sheet)).sweeps[0]).toMatchObject({ offset: 'known', slope: 'known' });
  });

  it('has a description on every field', () => {
    interface Field {
      readonly description?: string;
      readonly properties?: Readonly<Record<string, Field>>;
      readonly items?: Field;
    }
    const schema = z.toJSONSchema(sheetSchema, { io: 'input' }) as Field;
    const bare: string[] = [];
    const visit = (node: Field, path: string) => {
      for (const [name, field] of Object.entries(node.properties ?? {})) {
        if (!field.description) bare.push(`${path}.${name}`);
        visit(field, `${path}.${name}`);
        if (field.items) visit(field.items, `${path}.${name}`);
      }
    };
    visit(schema, 'sheet');
    expect(bare).toEqual([]);
  });
});

describe('the CSV form', () => {
  const csv = `sheet,1
kind,way
# a remark
station,F0,0,0
station,F1,200,0
station,F2,400,0

line,front,F0,F1,F2
walk,out,facing=-1,sigma=0.5,zero=shared
tilt,F0,F1,12.5
tilt,F1,F2,-3
walk,back,zero=shared
tilt,F1,F2,
sweep,s1,slope=known
height,F0,0
height,F1,1.2
limit,front.straightness,10,minimumZone
`;

  it('says the same as the JSON form', () => {
    const same = way({
      'walks.0.facing': -1,
      'walks.0.sigma': 0.5,
      'walks.0.zero': 'shared',
      'walks.1': { id: 'back', zero: 'shared', readings: [['F1', 'F2', null]] },
      'sweeps.0.slope': 'known',
      limits: [{ figure: 'front.straightness', max: 10, reference: 'minimumZone' }],
    });
    expect(parseSheet(csv)).toEqual(parseSheet(JSON.stringify(same)));
  });

  it('may be parted by semicolons and end its lines in any way', () => {
    expect(parseSheet(csv.replaceAll(',', ';').replaceAll('\n', '\r\n'))).toEqual(parseSheet(csv));
  });

  it('names a station that is none just as the JSON form does', () => {
    expect(failure(csv.replace('tilt,F1,F2,-3', 'tilt,F1,F9,-3')).place).toBe('walks[0].readings[1]');
  });

  it.each([
    ['tilt,F0,F1,12.5', 'tilt,F0,F1,12.5x', 'line 10', 'not a number'],
    ['tilt,F0,F1,12.5', 'tilt,F0,F1,12,5', 'line 10', '"5" is one cell too many'],
    ['height,F1,1.2', 'height,F1,1,2', 'line 16', 'one cell too many'],
    ['station,F1,200,0', 'station,F1,200,0,0', 'line 5', 'one cell too many'],
    ['line,front', 'line,__proto__', 'lines.__proto__', 'this name'],
    ['kind,way', 'kin,way', 'line 2', 'cannot begin'],
    ['walk,out,facing=-1', 'walk,out,facing', 'line 9', 'field=value'],
    ['walk,out,facing=-1,sigma=0.5,zero=shared\n', '', 'line 9', 'no walk above'],
    ['station,F1,200,0', 'station,F0,200,0', 'stations.F0', 'twice'],
  ])('%j spoiled to %j is refused at %s', (good, bad, place, says) => {
    const error = failure(csv.replace(good, bad));
    expect(error.place).toBe(place);
    expect(error.message).toContain(says);
  });
});
