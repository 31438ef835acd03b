/** Digits shown where nothing is known of the uncertainty. */
const DIGITS_WITHOUT_UNCERTAINTY = 1;
/** More decimals of µm, or of 0.0001 in, than this are not metal any more. */
const MOST_DIGITS = 3;
/** k = 2, about 95 %. */
const COVERAGE = 2;

/**
 * Decimals worth showing beside a standard uncertainty: the last one is the first that is not larger
 * than u. 0.6 gives one, 0.06 two, 3 none.
 */
export function decimalsFor(u: number): number {
  if (!(u > 0)) return DIGITS_WITHOUT_UNCERTAINTY;
  return Math.min(MOST_DIGITS, Math.max(0, Math.ceil(-Math.log10(u) - 1e-9)));
}

/** What is said to be sure for a standard uncertainty `u` above 0: below the last digit that is shown, rounded up to it. */
function covering(u: number): number {
  const last = 10 ** -decimalsFor(u);
  return u < last ? Math.ceil((COVERAGE * u) / last) * last : COVERAGE * u;
}

/** Writes a number, not negative, with so many decimals. */
export type NumberWriter = (value: number, decimals: number) => string;

/** How a quantity is written where it has room, in sentences, and where its unit stands in the head of a column. */
interface Form {
  /** How much of the internal unit one of a column is. */
  readonly one: number;
  /** In sentences the point stands so many digits further left, behind this unit. */
  readonly shift: number;
  readonly unit: string;
}

/** 0.0001 in and 0.0001 in for each foot, in µm and µm/m; 1 in = 25.4 mm by definition. */
const tenthUm = 2.54;
const tenthPerFoot = 100 / 12;

const forms: Readonly<Record<'mm' | 'in', Readonly<Record<string, Form>>>> = {
  mm: {},
  in: {
    µm: { one: tenthUm, shift: 4, unit: 'in' },
    'µm/m': { one: tenthPerFoot, shift: 4, unit: 'in/ft' },
  },
};

/**
 * How sizes of metal are written for one reader. Heights come in µm and slopes in µm/m, as `unit` says; both are written
 * so, or in inches. Other units stay as they are.
 */
export interface Writing {
  readonly lengthUnit: 'mm' | 'in';
  readonly number: NumberWriter;
  /** One of the unit in which columns and axes count, in the internal unit. */
  one(unit?: string): number;
  /** What stands in the head of a column: "µm", "0.0001 in". */
  head(unit?: string): string;
  /** For columns: digits in the unit of the head, no sign. */
  digits(value: number, u: number, unit?: string): string;
  /** For sentences: "9.6 µm", "0.00038 in", no sign, as many digits as the standard uncertainty `u` allows. */
  size(value: number, u: number, unit?: string): string;
  /** The same, digits and unit apart. */
  parts(value: number, u: number, unit?: string): { readonly digits: string; readonly unit: string };
  /** A size that is exact, without needless zeros: "10 µm", "0.0004 in". */
  exact(value: number, unit?: string): string;
  /** "sure to 0.8 µm" for a standard uncertainty of 0.4 µm: what is said to a person covers about 95 %. */
  sureTo(u: number, unit?: string): string;
  /**
   * The number in "sure to", for columns: never nought, for where u is smaller than the last digit it is rounded up to it; null
   * where readings agree so well, or are so few, that they say nothing of their own uncertainty.
   */
  expanded(u: number, unit?: string): string | null;
  /** Whether nothing is left of a value at the digits that are shown. */
  isNone(value: number, u: number, unit?: string): boolean;
}

/** The writing for who measures lengths in mm or in inches. */
export function writingFor(lengthUnit: 'mm' | 'in', number: NumberWriter): Writing {
  const formOf = (unit: string): Form => forms[lengthUnit][unit] ?? { one: 1, shift: 0, unit };
  const parts: Writing['parts'] = (value, u, unit = 'µm') => {
    const { one, shift, unit: said } = formOf(unit);
    const digits = number(Math.abs(value) / one / 10 ** shift, decimalsFor(u / one) + shift);
    return { digits, unit: said };
  };
  return {
    lengthUnit,
    number,
    parts,
    one: (unit = 'µm') => formOf(unit).one,
    head: (unit = 'µm') => {
      const { shift, unit: said } = formOf(unit);
      return shift === 0 ? said : `${number(10 ** -shift, shift)} ${said}`;
    },
    digits: (value, u, unit = 'µm') => {
      const { one } = formOf(unit);
      return number(Math.abs(value) / one, decimalsFor(u / one));
    },
    size: (...given) => Object.values(parts(...given)).join(' '),
    exact: (value, unit = 'µm') => {
      const { one, shift, unit: said } = formOf(unit);
      const shown = Math.abs(value) / one / 10 ** shift;
      const most = MOST_DIGITS + shift;
      const zeros = /0*$/.exec(shown.toFixed(most))![0].length;
      return `${number(shown, most - zeros)} ${said}`;
    },
    sureTo: (u, unit = 'µm') => {
      const { one, shift, unit: said } = formOf(unit);
      const decimals = decimalsFor(u / one);
      if (!(u > 0)) return 'how sure is not known';
      return `sure to ${number(covering(u / one) / 10 ** shift, decimals + shift)} ${said}`;
    },
    expanded: (u, unit = 'µm') => {
      const { one } = formOf(unit);
      return u > 0 ? number(covering(u / one), decimalsFor(u / one)) : null;
    },
    isNone: (value, u, unit = 'µm') => {
      const { one } = formOf(unit);
      return Number((Math.abs(value) / one).toFixed(decimalsFor(u / one))) === 0;
    },
  };
}

/** In µm, with a point. */
export const metric: Writing = writingFor('mm', (value, decimals) => value.toFixed(decimals));
