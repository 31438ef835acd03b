import { WayscribeError } from '../errors.ts';

/**
 * A simple sheet as comma (or semicolon) separated rows; what a row is, its first cell says:
 *
 *     sheet,1
 *     kind,way
 *     title,Front way as found
 *     units,mm,um/m,um
 *     station,F0,0,0
 *     station,F1,200,0
 *     station,F2,400,0
 *     line,front,F0,F1,F2
 *     walk,out,facing=1,zero=free,sigma=1
 *     tilt,F0,F1,12.5
 *     tilt,F1,F2,-3
 *     sweep,s1,slope=free,offset=free
 *     height,F0,0
 *     limit,front.straightness,10,minimumZone
 *
 * `tilt` rows belong to the last `walk` above them, `height` rows to the last `sweep`. After the id of a
 * walk or sweep any of its fields may follow as `field=value`. An empty reading is one that was skipped.
 * Empty rows and rows that begin with # are passed over. A point is the decimal sign; a row with more cells than it
 * can use is refused.
 *
 * Answers the same object as the JSON form would; `validateSheet` proves it. Errors of a row name the line
 * of the text: `line 7`.
 */
export function sheetFromCsv(text: string): Record<string, unknown> {
  const separator = /^sheet\s*;/i.test(text) ? ';' : ',';
  const sheet: Record<string, unknown> = {};
  const stations: [string, unknown][] = [];
  const lines: [string, unknown][] = [];
  const walks: Group[] = [];
  const sweeps: Group[] = [];
  const limits: unknown[] = [];

  text.split(/\r?\n/).forEach((row, index) => {
    if (row.trim() === '' || row.startsWith('#')) return;
    const [name = '', ...cells] = row.split(separator).map((cell) => cell.trim());
    const fail = (message: string, remedy: string) =>
      new WayscribeError('sheet.invalid', `line ${index + 1}`, message, remedy);
    const number = (cell = '') => {
      const value = cell === '' ? Number.NaN : Number(cell);
      if (Number.isFinite(value)) return value;
      throw fail(`"${cell}" is not a number`, 'write a number with a decimal point');
    };
    const reading = (cell: string | undefined) => (cell ? number(cell) : null);
    const last = (groups: Group[], kind: string) => {
      const group = groups.at(-1);
      if (group) return group.readings;
      throw fail(`there is no ${kind} above this row`, `begin it with a row "${kind},name"`);
    };

    const most = mostCells[name.toLowerCase()] ?? Number.POSITIVE_INFINITY;
    const surplus = cells.slice(most).find((cell) => cell !== '');
    if (surplus !== undefined) {
      throw fail(
        `"${surplus}" is one cell too many`,
        'take it out; write a decimal point, or separate the cells with semicolons',
      );
    }
    switch (name.toLowerCase()) {
      case 'sheet':
        sheet.sheet = number(cells[0]);
        break;
      case 'kind':
      case 'title':
      case 'phase':
      case 'part':
      case 'notes':
        sheet[name.toLowerCase()] = name.toLowerCase() === 'kind' ? cells[0] : cells.join(separator);
        break;
      case 'gravitycurvature':
        sheet.gravityCurvature = cells[0];
        break;
      case 'units':
        sheet.units = withoutBlanks({ length: cells[0], tilt: cells[1], height: cells[2] });
        break;
      case 'station':
        stations.push([cells[0] ?? '', [number(cells[1]), cells[2] ? number(cells[2]) : 0]]);
        break;
      case 'line':
        lines.push([cells[0] ?? '', cells.slice(1).filter(Boolean)]);
        break;
      case 'walk':
        walks.push(group(cells, fail));
        break;
      case 'sweep':
        sweeps.push(group(cells, fail));
        break;
      case 'tilt':
        last(walks, 'walk').push([cells[0], cells[1], reading(cells[2])]);
        break;
      case 'height':
        last(sweeps, 'sweep').push([cells[0], reading(cells[1])]);
        break;
      case 'limit':
        limits.push(withoutBlanks({ figure: cells[0], max: number(cells[1]), reference: cells[2] }));
        break;
      default:
        throw fail(`a row cannot begin with "${name}"`, `begin it with ${rowNames.join(', ')}`);
    }
  });
  return { ...sheet, stations: unique(stations), lines: unique(lines), walks, sweeps, limits };
}

const rowNames = ['kind', 'title', 'units', 'station', 'line', 'walk', 'tilt', 'sweep', 'height', 'limit'];

/** Cells that a row has behind its name; those that are not here have as many as one likes. */
const mostCells: Record<string, number> = {
  ...{ sheet: 1, kind: 1, gravitycurvature: 1, units: 3 },
  ...{ station: 3, tilt: 3, height: 2, limit: 3 },
};

interface Group extends Record<string, unknown> {
  readings: unknown[];
}

function group([id = '', ...fields]: string[], fail: (message: string, remedy: string) => Error): Group {
  const entries = fields.filter(Boolean).map((field): [string, unknown] => {
    const at = field.indexOf('=');
    if (at < 1) throw fail(`"${field}" is not field=value`, 'write as facing=-1');
    const value = field.slice(at + 1).trim();
    return fieldOf(field.slice(0, at).trim(), value);
  });
  return { id, ...Object.fromEntries(entries), readings: [] };
}

function fieldOf(name: string, value: string): [string, unknown] {
  const isNumber =
    ['facing', 'sense', 'sigma'].includes(name) && value !== '' && Number.isFinite(Number(value));
  const isFlag = ['drift', 'turned'].includes(name) && /^(true|false)$/.test(value);
  return [name, isNumber ? Number(value) : isFlag ? value === 'true' : value];
}

function unique(entries: [string, unknown][]): Record<string, unknown> {
  const names = new Set<string>();
  for (const [name] of entries) {
    if (names.has(name)) {
      throw new WayscribeError(
        'sheet.invalid',
        `stations.${name}`,
        'this name is used twice',
        'name it once',
      );
    }
    names.add(name);
  }
  return Object.fromEntries(entries);
}

function withoutBlanks(fields: Record<string, unknown>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(fields).filter(([, value]) => value !== undefined && value !== ''),
  );
}
