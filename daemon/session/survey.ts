import type { Observable } from 'rxjs';
import type { ProfileBook } from '../../protocols/book.ts';
import { channelFor } from '../../protocols/channels.ts';
import { type Profile, profileSchema } from '../../protocols/profile.ts';
import { WayscribeError } from '../../shared/errors.ts';
import { armed, spent } from '../../shared/live/hands-free.ts';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { Instrument } from '../instruments/instrument.ts';
import type { PortMaker } from '../ports/port.ts';
import type { InstrumentStore } from '../proving/instrument-store.ts';
import { readRecording } from '../recording/reader.ts';
import { reopenRecording } from '../recording/reopen.ts';
import type { RecordingStore } from '../recording/store.ts';
import { RecordingWriter } from '../recording/writer.ts';
import { SimulatedBench } from '../simulate/bench.ts';
import { Walker } from '../simulate/walker.ts';
import { Keeper } from './keeper.ts';
import { Needle } from './needle.ts';

/** Path that stands for the simulated level of the demo. */
export const simulatedPath = 'simulated';

export interface SurveyTools {
  readonly store: RecordingStore;
  readonly program: string;
  /** Whether simulated instruments may be used. */
  readonly demo: boolean;
  /** How many times faster than usual they are moved and come to rest. */
  readonly pace: number;
  readonly profiles: ProfileBook;
  readonly instruments: InstrumentStore;
  makePort(path: string): PortMaker;
}

/** A survey that is on: its keeper, its level on a cable, and in the demo the hand that moves it. */
export class Survey {
  readonly keeper: Keeper;
  readonly instrument: Instrument | null;
  readonly needle: Needle | null;
  readonly bench: SimulatedBench | null;
  readonly walker: Walker | null;

  private constructor(keeper: Keeper, tools: SurveyTools, bench: SimulatedBench | null) {
    const { setup } = keeper.session;
    const { instrument } = setup;
    this.keeper = keeper;
    this.bench = bench;
    this.walker = bench && new Walker(keeper, bench, tools.pace);
    if (instrument.source === 'typed') {
      this.instrument = null;
      this.needle = null;
      return;
    }
    const port = bench?.port ?? tools.makePort(instrument.port!);
    this.instrument = new Instrument(instrument.name, profileFor(keeper.session.header, tools), port);
    // After a restart the level may still stand where the last take was made.
    const handsFree = keeper.session.takes.length > 0 ? spent : armed;
    this.needle = new Needle(
      this.instrument,
      instrument,
      (event, stamp) => keeper.record(event, stamp),
      handsFree,
    );
    keeper.use(this.needle);
    // A finished survey holds no port.
    keeper.events$.subscribe(({ type }) => void (type === 'end' && this.instrument?.stop()));
    void this.instrument.start();
  }

  /**
   * Begins a new survey; its recording is on disk when this returns.
   * @throws WayscribeError `profile.invalid`, `command.invalid` for a set-up that can't work, or of the recording
   */
  static async start(setup: Setup, tools: SurveyTools): Promise<Survey> {
    checkInstrument(setup, tools, (id) => tools.profiles.find(id));
    const bench = benchFor(setup, tools);
    const t = Date.now();
    const id = await tools.store.newId(setup, t);
    const header: Header = {
      recording: 1,
      id,
      program: tools.program,
      t,
      setup,
      ...(setup.instrument.source === 'cable' && { profile: tools.profiles.find(setup.instrument.profile!) }),
      ...(bench && { simulated: { scenario: bench.state$.value.scenario, truthUm: bench.world.truthUm() } }),
    };
    const writer = await RecordingWriter.create(tools.store.pathOf(id), header);
    return new Survey(new Keeper(header, [], writer), tools, bench);
  }

  /** Goes on with a recording, in the same file; what was torn off its end is on record. */
  static async resume(id: string, why: string, tools: SurveyTools): Promise<Survey> {
    const path = await tools.store.find(id);
    const { header, events } = await readRecording(path, { skipReadings: true });
    checkInstrument(header.setup, tools, () => profileFor(header, tools));
    const { writer, torn } = await reopenRecording(path);
    const keeper = new Keeper(header, events, writer);
    await keeper.record({ type: 'resumed', why, ...(torn && { torn }) });
    return new Survey(keeper, tools, benchFor(header.setup, tools));
  }

  get header(): Header {
    return this.keeper.session.header;
  }

  get kept(): readonly SessionEvent[] {
    return this.keeper.kept;
  }

  get seq(): number {
    return this.keeper.session.seq;
  }

  get events$(): Observable<SessionEvent> {
    return this.keeper.events$;
  }

  async close(): Promise<void> {
    this.walker?.stop();
    await this.instrument?.stop();
    this.bench?.stop();
    await this.keeper.close();
  }
}

function benchFor(setup: Setup, { pace }: SurveyTools): SimulatedBench | null {
  return setup.instrument.port === simulatedPath && setup.instrument.source === 'cable'
    ? new SimulatedBench(setup, { pace })
    : null;
}

/** The profile that the recording was begun with; the one of that name when its copy is of another form. */
function profileFor({ profile, setup }: Header, tools: SurveyTools): Profile {
  const copy = profileSchema.safeParse(profile);
  return copy.success ? copy.data : tools.profiles.find(setup.instrument.profile!);
}

function checkInstrument({ instrument }: Setup, tools: SurveyTools, find: (id: string) => Profile): void {
  if (instrument.source === 'typed') return;
  if (!instrument.port) {
    throw new WayscribeError(
      'command.invalid',
      'instrument.port',
      'no port is chosen',
      'choose the port of the instrument',
    );
  }
  if (!instrument.profile) {
    throw new WayscribeError(
      'command.invalid',
      'instrument.profile',
      'it is not said how the instrument talks',
      'choose it',
    );
  }
  channelFor(find(instrument.profile), instrument.unit, instrument.channel);
  if (instrument.port === simulatedPath && !tools.demo) {
    throw new WayscribeError(
      'command.invalid',
      'instrument.port',
      'is the simulated instrument',
      'run the demo for that',
    );
  }
}
