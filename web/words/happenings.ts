import type { Session } from '../../shared/session/fold.ts';
import { sizeText, unitWord } from './live.ts';

/** What happened, newest first, in words: takes with what became of them, notes, gaps. */
export function happenings(session: Session, most: number): { seq: number; text: string }[] {
  const { unit } = session.setup.instrument;
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
    const what = `${place.at.join('–')}: ${value < 0 ? 'minus ' : ''}${sizeText(value, unit)} ${unitWord(unit)}, ${by[event.by]}`;
    return { seq, text: out ? `${what}. Taken back: ${out}` : what };
  });
  const notes = session.notes.map(({ seq, text }) => ({ seq, text: `Note: ${text}` }));
  const gaps = session.gaps.map(({ seq, is, why }) => ({
    seq,
    text: is === 'lost' ? `The instrument was lost: ${why}` : 'The instrument is back',
  }));
  const skips = [...session.skipped.values()].map(({ seq, place, reason }) => ({
    seq,
    text: `${place.at.join('–')} skipped: ${reason}`,
  }));
  return [...takes, ...notes, ...gaps, ...skips].sort((a, b) => b.seq - a.seq).slice(0, most);
}
