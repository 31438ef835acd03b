import type { Session } from '../../shared/session/fold.ts';
import { capital, instrumentWord } from './kinds.ts';
import { dateText, number, shortNumber } from './quantity.ts';

/** One cell of the title block. */
export interface Cell {
  readonly caption: string;
  readonly value: string;
  /** Somebody wrote it: it is in that person's language. */
  readonly own?: boolean;
}

/** The title block after ISO 7200: what, which, with what, by whom, and the state of the record. */
export function titleBlock(session: Session, replay: boolean): readonly Cell[] {
  const { setup, header } = session;
  const { instrument } = setup;
  return [
    { caption: 'Part', value: setup.part, own: true },
    { caption: 'Surface', value: setup.surface },
    { caption: 'Round', value: setup.round },
    {
      caption: capital(instrumentWord(setup.kind)),
      value: instrument.provedOn
        ? `${instrument.name}, proved ${instrument.provedOn}`
        : `${instrument.name}, not proved`,
    },
    {
      caption: 'By / date',
      value: [setup.operator, dateText(header.t)].filter(Boolean).join(', '),
      own: true,
    },
    { caption: 'Record', value: recordText(session, replay) },
    { caption: 'Support', value: setup.support || 'not said', own: setup.support !== '' },
    { caption: 'Iron / air', value: `${degrees(setup.partC)} / ${degrees(setup.airC)} °C` },
  ];
}

function recordText({ seq, ended }: Session, replay: boolean): string {
  if (replay) return 'replay of a recording';
  const events = `${shortNumber(seq, 0)} events`;
  return ended ? `closed, ${events}` : `on disk, ${events}`;
}

function degrees(value: number | undefined): string {
  return value === undefined ? '–' : number(value, 1);
}
