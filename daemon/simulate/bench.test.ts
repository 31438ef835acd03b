import { firstValueFrom } from 'rxjs';
import { filter } from 'rxjs/operators';
import { expect, onTestFinished, test } from 'vitest';
import { findProfile } from '../../protocols/shipped.ts';
import { armed } from '../../shared/live/hands-free.ts';
import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { SessionEvent } from '../../shared/session/events.ts';
import { setupSchema } from '../../shared/session/setup.ts';
import { placementsOf } from '../../shared/survey/plan.ts';
import { Instrument } from '../instruments/instrument.ts';
import { Needle } from '../session/needle.ts';
import { SimulatedBench } from './bench.ts';

/** What the instrument reads on nothing, in the unit of the set-up, and how far a quiet mean may lie off. */
const zeros = { bed: [38, 2], slide: [0.021, 0.001], dovetail: [0, 0.001] } as const;

test.each(['bed', 'slide', 'dovetail'] as const)(
  'the simulated bench of a %s speaks as its set-up says',
  async (kind) => {
    const setup = setupSchema.parse(demoSetups[kind]);
    const { instrument: how } = setup;
    const bench = new SimulatedBench(setup);
    const instrument = new Instrument(how.name, findProfile(how.profile!), bench.port);
    let seq = 0;
    const record = async (event: object) => ({ ...event, seq: ++seq }) as SessionEvent;
    const needle = new Needle(instrument, how, record, armed);
    onTestFinished(async () => {
      bench.stop();
      needle.stop();
      await instrument.stop();
    });
    await instrument.start();
    const place = placementsOf(bench.world.plan.runs[0]!)[1]!;
    bench.setDown(place);
    const { mean } = await firstValueFrom(
      needle.live$.pipe(filter(({ steadiness }) => steadiness === 'steady')),
    );
    const [zero, off] = zeros[kind];
    const due = bench.world.reading(place) / (how.unit === 'mm' ? 1000 : 1) + zero;
    expect(Math.abs(mean! - due)).toBeLessThan(off);
    // The first line heard may be half a one.
    expect(instrument.state$.value.discarded).toBeLessThanOrEqual(1);
  },
);
