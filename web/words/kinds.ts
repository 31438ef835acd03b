import type { ReferenceKind } from '../../shared/figures/reference.ts';
import type { Setup } from '../../shared/session/setup.ts';

export type Kind = Setup['kind'];

/** What a kind of survey is called, what reads it, and what its heights are drawn against. */
export interface KindWords {
  readonly name: string;
  /** One line on what is done. */
  readonly what: string;
  readonly reads: 'tilt' | 'height';
  /** What is set on a place. */
  readonly tool: 'level' | 'tip' | 'pins' | 'gauge' | 'micrometer';
  /** Heights are drawn against the motion that carries the indicator, so that a slope of the line shows. */
  readonly overMotion: boolean;
  /** What is turned over half way through, and how. */
  readonly turn?: { readonly order: string; readonly done: string };
}

export const kindWords: Readonly<Record<Kind, KindWords>> = {
  way: {
    name: 'Way',
    what: 'a level, foot to foot',
    reads: 'tilt',
    tool: 'level',
    overMotion: false,
  },
  bed: {
    name: 'Bed',
    what: 'two ways and across',
    reads: 'tilt',
    tool: 'level',
    overMotion: false,
  },
  plate: {
    name: 'Plate',
    what: 'eight lines or a grid',
    reads: 'tilt',
    tool: 'level',
    overMotion: false,
  },
  slide: {
    name: 'Slide',
    what: 'an indicator rides along',
    reads: 'height',
    tool: 'tip',
    overMotion: true,
  },
  straightedge: {
    name: 'Straightedge',
    what: 'beside a way, turned over',
    reads: 'height',
    tool: 'tip',
    overMotion: false,
    turn: { order: 'Turn the straightedge over', done: 'turned over' },
  },
  square: {
    name: 'Square',
    what: 'on a table, turned round',
    reads: 'height',
    tool: 'tip',
    overMotion: true,
    turn: { order: 'Turn the square round', done: 'turned round' },
  },
  bar: {
    name: 'Test bar',
    what: 'in a spindle, half turned',
    reads: 'height',
    tool: 'tip',
    overMotion: true,
    turn: { order: 'Turn the spindle half round', done: 'half turned' },
  },
  dovetail: {
    name: 'Dovetail',
    what: 'over two pins',
    reads: 'height',
    tool: 'pins',
    overMotion: true,
  },
  repeat: {
    name: 'Repeat reading',
    what: 'a plate, place by place',
    reads: 'height',
    tool: 'gauge',
    overMotion: true,
  },
  collars: {
    name: 'Collars',
    what: 'turned, over their diameters',
    reads: 'height',
    tool: 'micrometer',
    overMotion: true,
  },
  face: {
    name: 'Face plate',
    what: 'faced, under a straightedge',
    reads: 'height',
    tool: 'gauge',
    overMotion: false,
  },
};

/** The references that a kind can be told against: planes have no ends, and what is over a motion needs none. */
export function referencesOf(kind: Kind): readonly ReferenceKind[] {
  if (kindWords[kind].overMotion) return [];
  return kind === 'plate' ? ['leastSquares', 'minimumZone'] : ['ends', 'leastSquares', 'minimumZone'];
}

/** What the instrument of a survey is called. */
export function instrumentWord(kind: Kind): string {
  if (kind === 'dovetail' || kind === 'repeat' || kind === 'face') return 'gauge';
  if (kind === 'collars') return 'micrometer';
  return kindWords[kind].reads === 'tilt' ? 'level' : 'indicator';
}

/** What a line of a survey is called where there are several, and beside its curve. */
export function lineTitle(setup: Setup, line: string): string {
  const titles: Partial<Record<Kind, Record<string, string>>> = {
    bed: { front: 'Front way', rear: 'Rear way' },
    slide: { top: 'Top face', side: 'Side face' },
    bar: { top: 'Bar, up and down', side: 'Bar, sideways' },
  };
  if (setup.kind === 'repeat') return capital(line);
  return titles[setup.kind]?.[line] ?? capital(setup.kind === 'plate' ? line : setup.surface);
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
