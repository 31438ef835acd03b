import type { Session } from '../../shared/session/fold.ts';
import type { InstrumentSetup } from '../../shared/session/setup.ts';
import { sizeText, unitWord } from './live.ts';

/** What happened, newest first, in words: takes with what became of them, notes, gaps. */
export function happenings(session: Session, most: number): { seq: number; text: string }[] {
  const { instrument } = session.setup;
  const by = {
    'hands-free': 'hands-free',
    typed: 'typed',
    pedal: 'by pedal',
    key: 'by key',
    button: 'by button',
    instrument: 'from the instrument',
  };
  const takes = session.takes.map(({ event, out }) => {
    const { seq, place, value } = event;
    const what = `${place.at.join('–')}: ${readingWords(value, instrument)}, ${by[event.by]}`;
    return { seq, text: out ? `${what}. Taken back: ${out}` : what };
  });
  const notes = session.notes.map(({ seq, text }) => ({ seq, text: `Note: ${text}` }));
  const gaps = session.gaps.map(({ seq, is, why, from }) => {
    const name = from === instrument.name ? 'The instrument' : from;
    return { seq, text: is === 'lost' ? `${name} was lost: ${why}` : `${name} is back` };
  });
  const skips = [...session.skipped.values()].map(({ seq, place, reason }) => ({
    seq,
    text: `${place.at.join('–')} skipped: ${reason}`,
  }));
  return [...takes, ...notes, ...gaps, ...skips].sort((a, b) => b.seq - a.seq).slice(0, most);
}

/** A reading as it was read: in its unit, or in graduations of a stated size. */
function readingWords(value: number, { unit, graduation }: InstrumentSetup): string {
  const minus = value < 0 ? 'minus ' : '';
  if (graduation === 1) return `${minus}${sizeText(value, unit)} ${unitWord(unit)}`;
  return `${minus}${Math.abs(value)} graduations of ${graduation} ${unitWord(unit)}`;
}
