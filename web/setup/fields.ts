import type { Kind } from '../words/kinds.ts';

/** The set-up as it is filled in: text as typed, lengths in the unit that was chosen. One form holds every kind. */
export const emptyForm = {
  kind: 'way' as Kind,
  part: '',
  surface: 'front way',
  round: 'as found',
  lengthUnit: 'mm',
  limit: '',
  operator: '',
  support: '',
  partC: '',
  airC: '',
  topC: '',
  bottomC: '',
  depth: '',
  bolts: '',
  carriage: '',
  mounted: '',
  standing: '',
  gloves: '',
  handsFree: 'yes',
  source: 'cable',
  name: 'level',
  port: '',
  portPath: '',
  profile: '',
  unit: 'um/m',
  graduation: '0.02',
  sigma: '',
  /** Names of instruments that listen along, one a line. */
  along: '',
  reference: '',
  referenceFaces: 'far',
  plus: 'high',
  length: '',
  width: '',
  gauge: '',
  border: '25',
  base: '150',
  stations: '',
  startEnd: 'headstock end',
  farEnd: 'tail end',
  faces: 'far',
  back: 'same',
  crossEvery: '1',
  crossFaces: 'far',
  frontShape: 'flat',
  rearShape: 'vee',
  pattern: 'eight lines',
  zero: 'shared',
  sweptFaces: 'top',
  planes: 'both',
  sag: '0',
  pinDiameter: '10',
  flankAngle: '55',
  form: 'male',
  rows: '3',
};
export type SetupForm = { -readonly [F in keyof typeof emptyForm]: F extends 'kind' ? Kind : string };
export type FormField = Exclude<keyof SetupForm, 'kind'>;

const indicator = { name: 'indicator', unit: 'um', graduation: '1' };

/** What a kind begins with, where that is not what a way begins with. */
const beginnings: Readonly<Record<Kind, Partial<SetupForm>>> = {
  way: {},
  bed: { surface: 'bed' },
  plate: { surface: 'top', base: '100', back: 'no' },
  slide: {
    ...indicator,
    surface: 'slide to its travel',
    stations: '7',
    startEnd: 'left end',
    farEnd: 'right end',
  },
  straightedge: { ...indicator, surface: 'front way', stations: '11' },
  square: {
    ...indicator,
    surface: 'knee to column',
    stations: '4',
    startEnd: 'lower end',
    farEnd: 'upper end',
  },
  bar: {
    ...indicator,
    surface: 'spindle to travel',
    length: '300',
    stations: '4',
    startEnd: 'near the nose',
    farEnd: 'far from it',
  },
  dovetail: {
    name: 'micrometer',
    source: 'typed',
    unit: 'mm',
    graduation: '1',
    sigma: '0.002',
    surface: 'dovetail',
    stations: '5',
    startEnd: 'front end',
    farEnd: 'rear end',
  },
  repeat: { ...indicator, name: 'repeat gauge', surface: 'top', stations: '5' },
  collars: {
    name: 'micrometer',
    source: 'typed',
    unit: 'mm',
    graduation: '1',
    sigma: '0.002',
    surface: 'test cut',
    stations: '2',
    farEnd: 'free end',
  },
  face: {
    name: 'gauge blocks',
    source: 'typed',
    unit: 'mm',
    graduation: '1',
    sigma: '0.002',
    plus: 'low',
    surface: 'face plate',
    stations: '3',
    startEnd: 'near rim',
    farEnd: 'far rim',
  },
};

/** The form of a kind before anything is filled in. */
export function emptyFormOf(kind: Kind): SetupForm {
  return { ...emptyForm, ...beginnings[kind], kind };
}

/** How a field becomes a value of the set-up: as it is, as it is unless empty, as a number, or as a length in the unit that was chosen. */
type Reads = 'text' | 'if said' | 'number' | 'length';
/** Key of the set-up, field of the form, and how the one becomes the other. */
export type Mapping = readonly [key: string, field: FormField, reads: Reads];

export const commonMappings: readonly Mapping[] = [
  ['part', 'part', 'text'],
  ['surface', 'surface', 'text'],
  ['round', 'round', 'text'],
  ['lengthUnit', 'lengthUnit', 'text'],
  ['limit', 'limit', 'number'],
  ['operator', 'operator', 'text'],
  ['support', 'support', 'text'],
  ['partC', 'partC', 'number'],
  ['airC', 'airC', 'number'],
  ['topC', 'topC', 'number'],
  ['bottomC', 'bottomC', 'number'],
  ['depthMm', 'depth', 'length'],
  ['bolts', 'bolts', 'if said'],
  ['carriage', 'carriage', 'if said'],
  ['mounted', 'mounted', 'if said'],
  ['standing', 'standing', 'if said'],
  ['gloves', 'gloves', 'if said'],
];

const ends: readonly Mapping[] = [
  ['startEnd', 'startEnd', 'text'],
  ['farEnd', 'farEnd', 'text'],
];
const walked: readonly Mapping[] = [
  ['baseMm', 'base', 'length'],
  ['faces', 'faces', 'text'],
  ['back', 'back', 'text'],
];
const swept: readonly Mapping[] = [['stations', 'stations', 'number'], ['plus', 'plus', 'text'], ...ends];
const length: Mapping = ['lengthMm', 'length', 'length'];
const stations: Mapping = ['stations', 'stations', 'number'];

/** The fields that belong to each kind alone. */
export const kindMappings: Readonly<Record<Kind, readonly Mapping[]>> = {
  way: [length, stations, ...walked, ...ends],
  bed: [
    length,
    stations,
    ...walked,
    ...ends,
    ['gaugeMm', 'gauge', 'length'],
    ['frontShape', 'frontShape', 'text'],
    ['rearShape', 'rearShape', 'text'],
    ['crossEvery', 'crossEvery', 'number'],
    ['crossFaces', 'crossFaces', 'text'],
  ],
  plate: [
    length,
    ['widthMm', 'width', 'length'],
    ['borderMm', 'border', 'length'],
    ['pattern', 'pattern', 'text'],
    ['zero', 'zero', 'text'],
    ...walked,
  ],
  slide: [
    ['travelMm', 'length', 'length'],
    ['faces', 'sweptFaces', 'text'],
    ['back', 'back', 'text'],
    ...swept,
  ],
  straightedge: [length, ...swept],
  square: [length, ...swept],
  bar: [length, ['planes', 'planes', 'text'], ['sagUm', 'sag', 'number'], ...swept],
  dovetail: [
    length,
    stations,
    ['pinDiameterMm', 'pinDiameter', 'length'],
    ['flankAngleDeg', 'flankAngle', 'number'],
    ['form', 'form', 'text'],
    ...ends,
  ],
  repeat: [
    length,
    ['widthMm', 'width', 'length'],
    ['borderMm', 'border', 'length'],
    ['rows', 'rows', 'number'],
    stations,
    ['plus', 'plus', 'text'],
  ],
  collars: [length, stations, ...ends],
  face: [length, ...swept],
};

/** What would be right in each field that can be wrong. */
export const right: Partial<Record<FormField, string>> = {
  part: 'Say which machine or part it is.',
  surface: 'Say what is measured.',
  length: 'A length, above 0 and up to 100 m.',
  width: 'A length, above 0 and up to 100 m.',
  gauge: 'A length, above 0 and up to 100 m.',
  border: 'From 0 up, and less than half the plate.',
  base: 'The distance between the feet, above 0 and up to 10 m.',
  stations: 'A whole number from 2 to 1,000.',
  startEnd: 'Give this end a name.',
  farEnd: 'Give this end a name.',
  crossEvery: 'A whole number from 1 to 100.',
  name: 'Give it a name.',
  port: 'Choose the port that it hangs on.',
  portPath: 'Type the path of the port.',
  profile: 'Choose how it talks.',
  graduation: 'A number above 0.',
  sigma: 'A number above 0, or nothing.',
  limit: 'A number above 0, or nothing.',
  sag: 'A number of µm, from 0 up.',
  rows: 'A whole number from 1 to 26.',
  pinDiameter: 'A length above 0.',
  flankAngle: 'Above 10 and below 90 degrees.',
  partC: 'Between −50 and 100, or nothing.',
  airC: 'Between −50 and 100, or nothing.',
  topC: 'Between −50 and 100, or nothing.',
  bottomC: 'Between −50 and 100, or nothing.',
  depth: 'A length above 0, or nothing.',
};
