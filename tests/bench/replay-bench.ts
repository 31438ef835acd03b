import { findProfile } from '../../protocols/shipped.ts';
import { Folded } from '../../shared/replay/folded.ts';
import { needleAt, steadyLimits } from '../../shared/replay/needle.ts';
import { readRecorded } from '../../shared/replay/recorded.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { Header } from '../../shared/session/events.ts';
import { fold } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { placementsOf } from '../../shared/survey/plan.ts';
import type { BenchRow } from './bench.ts';

const events = 1_000_000;
const readingsATake = 1000;
const seeks = 60;

/** A million events: readings ten times a second for a whole day and more, and a take now and then, over and over. */
function longRecording(): string {
  const setup = setupSchema.parse({ ...demoSetups.plate, back: 'no' });
  const header: Header = {
    recording: 1,
    id: 'long',
    program: 'bench',
    t: 0,
    setup,
    profile: findProfile('line-decimal'),
  };
  const places = fold(header, []).plan.runs.flatMap(placementsOf);
  const lines = [JSON.stringify(header)];
  const from = setup.instrument.name;
  for (let seq = 1; seq <= events; seq += 1) {
    const stamp = { seq, t: 100 * seq, m: 100 * seq };
    const value = ((seq * 7919) % 100) / 10;
    const take = seq % readingsATake === 0;
    const place = places[((seq / readingsATake) % places.length) | 0];
    lines.push(
      JSON.stringify(
        take
          ? {
              ...stamp,
              type: 'take',
              place,
              from,
              value,
              spread: 0.3,
              readings: [seq - 10, seq - 1],
              count: 10,
              by: 'hands-free',
              steadiness: 'steady',
            }
          : { ...stamp, type: 'reading', from, raw: '+1.0', value },
      ),
    );
  }
  return `${lines.join('\n')}\n`;
}

/** Jumps in a recording of a million events: what a page computes between the press and the picture. */
export function replayRows(): BenchRow[] {
  const text = longRecording();
  const loading = performance.now();
  const recorded = readRecorded(text, 'long');
  const folded = new Folded(recorded);
  const loadedMs = performance.now() - loading;
  const limits = steadyLimits(recorded.header);
  const jump = (k: number) => {
    const place = Math.floor(((k * 0.618034) % 1) * events);
    const start = performance.now();
    const session = folded.at(place);
    needleAt(recorded, limits, place);
    if (session.counted.size > 2) resultOf(session);
    return performance.now() - start;
  };
  const first = jump(seeks);
  const times = Array.from({ length: seeks }, (_, k) => jump(k)).sort((a, b) => a - b);
  const [median, slowest] = [times[seeks >> 1]!, times.at(-1)!];
  const whole = performance.now();
  fold(recorded.header, recorded.kept);
  const wholeMs = performance.now() - whole;
  return [
    { what: 'recording of 1 000 000 events, loading', value: loadedMs, unit: 'ms', wanted: '' },
    {
      what: 'jump in it: session, needle and result, median',
      value: median,
      unit: 'ms',
      wanted: 'under 100',
    },
    { what: 'jump in it, the very first, before anything is compiled', value: first, unit: 'ms', wanted: '' },
    { what: 'jump in it, slowest of 60', value: slowest, unit: 'ms', wanted: 'under 100' },
    { what: 'folding all of it / a jump', value: wholeMs / median, unit: '×', wanted: 'more than 1' },
  ];
}
