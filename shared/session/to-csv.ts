import type { Session } from './fold.ts';

const columns = [
  'seq',
  'time',
  'run',
  'stations',
  'value',
  'unit',
  'spread',
  'readings',
  'taken by',
  'steadiness',
  'counts',
  'why not',
] as const;

/**
 * Every take of a session as comma-separated values (RFC 4180), the voided ones too, in the order in which they
 * were made. Values as the instrument read; times in UTC (ISO 8601).
 */
export function toCsv(session: Session): string {
  const { unit, graduation } = session.setup.instrument;
  const unitName = graduation === 1 ? unit : `${graduation} ${unit}`;
  const rows = session.takes.map(({ event, out }) => [
    event.seq,
    new Date(event.t).toISOString(),
    event.place.run,
    event.place.at.join(' '),
    event.value,
    unitName,
    event.spread ?? '',
    event.count,
    event.by,
    event.steadiness ?? '',
    out === undefined ? 'yes' : 'no',
    out ?? '',
  ]);
  return [columns, ...rows].map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

/** Digits that a mean of readings can be sure of in binary; what is behind them is noise of the arithmetic. */
const digits = 15;

/** A text that begins like a formula is kept from being one in a spreadsheet. */
function cell(value: string | number): string {
  if (typeof value === 'number') return String(Number(value.toPrecision(digits)));
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
