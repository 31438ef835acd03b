import type { Kind } from '../words/kinds.ts';
import { say } from '../words/say.ts';
import type { FormField, SetupForm } from './fields.ts';

/** One field as it stands in the set-up: to be typed, or one of a few. */
export interface Entry {
  readonly field: FormField;
  readonly label: string;
  readonly options?: readonly (readonly [value: string, text: string])[];
  readonly wide?: boolean;
}

const surfaceLabel: Readonly<Record<Kind, string>> = {
  way: 'Way that is walked',
  bed: 'Bed, by name',
  plate: 'Face that is walked',
  slide: 'Slide, and to what',
  straightedge: 'Way that is swept',
  square: 'What to what',
  bar: 'Axis, and to what',
  dovetail: 'Dovetail, by name',
  repeat: 'Face that is read',
  collars: 'Cut, by name',
  face: 'Face, by name',
};

const limitLabel: Readonly<Record<Kind, string>> = {
  way: 'Limit, µm, if agreed',
  bed: 'Limit of each way, µm, if agreed',
  plate: 'Limit, µm, if agreed',
  slide: 'Limit of parallel, µm, if agreed',
  straightedge: 'Limit, µm, if agreed',
  square: 'Limit, µm/m, if agreed',
  bar: 'Limit, µm/m, if agreed',
  dovetail: 'Limit of parallel, µm, if agreed',
  repeat: 'Limit of repeat reading, µm, if agreed',
  collars: 'Limit of taper, µm, if agreed',
  face: 'Limit of hollow, µm, if agreed',
};

const typed = (field: FormField, label: string, wide = false): Entry => ({ field, label, wide });
const chosen = (field: FormField, label: string, ...options: [string, string][]): Entry => ({
  field,
  label,
  options,
});

/** What is measured and how large it is, the first lines alike for every kind. */
export function partEntries(form: SetupForm): { about: Entry[]; size: Entry[]; ends: Entry[] } {
  const { kind } = form;
  const hasEnds = kind !== 'plate' && kind !== 'repeat';
  return {
    about: [
      typed('part', 'Machine or part', true),
      typed('round', 'Round'),
      typed('surface', surfaceLabel[kind], true),
      typed('limit', limitLabel[kind]),
    ],
    size: sizeEntries(form),
    ends: [
      ...(hasEnds
        ? [
            typed('startEnd', kind === 'square' ? 'Lower end, drawn left' : 'End at your left'),
            typed('farEnd', kind === 'square' ? 'Upper end, drawn right' : 'End at your right'),
          ]
        : []),
      chosen('lengthUnit', 'Lengths in', ['mm', 'mm'], ['in', 'inch']),
    ],
  };
}

function sizeEntries({ kind, lengthUnit }: SetupForm): Entry[] {
  const unit = lengthUnit === 'in' ? 'inch' : 'mm';
  const base = typed('base', `Foot spacing of the level, ${unit}`);
  const stations = typed('stations', 'Stations, one more than steps');
  switch (kind) {
    case 'way':
      return [typed('length', `Length of the way, ${unit}`), base, stations];
    case 'bed':
      return [
        typed('length', `Length of the ways, ${unit}`),
        base,
        stations,
        typed('gauge', `Between the two lines, ${unit}`),
        chosen('frontShape', 'Front way is', ['flat', 'flat'], ['vee', 'a vee']),
        chosen('rearShape', 'Rear way is', ['flat', 'flat'], ['vee', 'a vee']),
        typed('crossEvery', 'Read across at every … station'),
      ];
    case 'plate':
      return [
        typed('length', `Left to right, ${unit}`),
        typed('width', `Front to back, ${unit}`),
        typed('border', `Border left out, ${unit}`),
        base,
        chosen('pattern', 'Walked along', ['eight lines', 'eight lines'], ['grid', 'all lines of a grid']),
      ];
    case 'slide':
      return [
        typed('length', `Travel that is swept, ${unit}`),
        typed('stations', 'Stations'),
        chosen(
          'sweptFaces',
          'The tip runs on',
          ['top', 'the top'],
          ['side', 'the side'],
          ['both', 'top and side'],
        ),
      ];
    case 'straightedge':
      return [typed('length', `Length that is swept, ${unit}`), typed('stations', 'Stations')];
    case 'square':
      return [typed('length', `Length of blade swept, ${unit}`), typed('stations', 'Stations')];
    case 'bar':
      return [
        typed('length', `Near to far station, ${unit}`),
        typed('stations', 'Stations'),
        typed('sag', 'Bar hangs down at the far one, µm'),
        chosen(
          'planes',
          'Swept',
          ['both', 'on top and at the side'],
          ['top', 'on top'],
          ['side', 'at the side'],
        ),
      ];
    case 'dovetail':
      return [
        typed('length', `First to last place, ${unit}`),
        typed('stations', 'Places'),
        chosen(
          'form',
          'Dovetail is',
          ['male', 'male: over the pins'],
          ['female', 'female: between the pins'],
        ),
        typed('pinDiameter', `Diameter of the pins, ${unit}`),
        typed('flankAngle', 'Flank to flat, degrees'),
      ];
    case 'repeat':
      return [
        typed('length', `Left to right, ${unit}`),
        typed('width', `Front to back, ${unit}`),
        typed('border', `Border left out, ${unit}`),
        typed('rows', 'Rows of places'),
        typed('stations', 'Places in a row'),
      ];
    case 'collars':
      return [typed('length', `First to last collar, ${unit}`), typed('stations', 'Collars')];
    case 'face':
      return [typed('length', `Rim to rim, ${unit}`), typed('stations', 'Places, an odd number')];
  }
}

/** How it is walked or swept. */
export function runEntries({ kind, source }: SetupForm): Entry[] {
  const back = chosen(
    'back',
    'Walk back',
    ['same', 'yes, level stays as it is'],
    ['turned', 'yes, level turned end for end'],
    ['no', kind === 'plate' ? 'no: the lines check each other' : 'no: nothing is checked'],
  );
  const sweepBack = chosen('back', 'Sweep back', ['same', 'yes'], ['no', 'no: nothing is checked']);
  const zero = chosen(
    'zero',
    'Zero of the level',
    ['shared', 'the same on all lines'],
    ['free', 'set anew for each line'],
  );
  const runs: Partial<Record<Kind, Entry[]>> = {
    way: [back],
    bed: [back],
    plate: [back, zero],
    slide: [sweepBack],
  };
  const handsFree = chosen('handsFree', 'Hands-free', ['yes', 'takes when still'], ['no', 'I press Take']);
  return [...(runs[kind] ?? []), ...(source === 'cable' ? [handsFree] : [])];
}

/** What else a survey may depend on; asked once, and remembered. */
export function moreConditions({ lengthUnit }: SetupForm): readonly Entry[] {
  return [
    typed('bolts', say('Bolts and clamps')),
    typed('carriage', say('Carriage or table stands')),
    typed('mounted', say('Mounted on it')),
    typed('standing', say('You stand')),
    typed('gloves', say('Gloves')),
    typed('topC', say('Top of the iron, °C')),
    typed('bottomC', say('Bottom of the iron, °C')),
    typed('depth', say('Depth of the part, {unit}', { unit: lengthUnit === 'in' ? 'inch' : 'mm' })),
  ];
}

export const conditionEntries: readonly Entry[] = [
  typed('operator', 'By'),
  typed('support', 'Support'),
  typed('partC', 'Iron, °C'),
  typed('airC', 'Air, °C'),
];
