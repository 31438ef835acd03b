import type { Observable } from 'rxjs';
import type { ProfileBook } from '../../protocols/book.ts';
import { channelFor } from '../../protocols/channels.ts';
import { type Profile, profileSchema } from '../../protocols/profile.ts';
import { WayscribeError } from '../../shared/errors.ts';
import { spent, untouched } from '../../shared/live/hands-free.ts';
import type { Header, SessionEvent } from '../../shared/session/events.ts';
import { checkInstruments, instrumentsOf, referenceOf } from '../../shared/session/instruments.ts';
import { type Planted, plantableIn } from '../../shared/session/planted.ts';
import type { InstrumentSetup, Setup } from '../../shared/session/setup.ts';
import type { Placement } from '../../shared/survey/plan.ts';
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
import { Reference } from './reference.ts';

/** Path that stands for the simulated level of the demo. */
export const simulatedPath = 'simulated';

export interface SurveyTools {
  readonly store: RecordingStore;
  readonly program: string;
  /** Another daemon writes in the folder: recordings are played, and nothing is written. */
  readonly readOnly?: boolean;
  /** Whether simulated instruments may be used. */
  readonly demo: boolean;
  /** How many times faster than usual they are moved and come to rest. */
  readonly pace: number;
  readonly profiles: ProfileBook;
  readonly instruments: InstrumentStore;
  makePort(path: string): PortMaker;
}

/** A survey that is on: its keeper, its instruments on cables, and in the demo the hand that moves the level. */
export class Survey {
  readonly keeper: Keeper;
  /** Of the instrument that is moved first, then of those that listen along; none when the readings are typed. */
  readonly needles: readonly Needle[];
  readonly bench: SimulatedBench | null;
  readonly walker: Walker | null;

  private constructor(keeper: Keeper, tools: SurveyTools, bench: SimulatedBench | null) {
    const { setup, header } = keeper.session;
    this.keeper = keeper;
    this.bench = bench;
    this.walker = bench && new Walker(keeper, bench, tools.pace);
    // After a restart the level may still stand where the last take was made.
    const handsFree = keeper.session.takes.length > 0 ? spent : untouched;
    this.needles = instrumentsOf(setup)
      .filter(({ source }) => source === 'cable')
      .map((instrument) => {
        const simulated = instrument.port === simulatedPath && bench;
        const port = simulated ? simulated.port : tools.makePort(instrument.port!);
        const own = new Instrument(instrument.name, profileFor(instrument, header, tools), port);
        return new Needle(own, instrument, (event, stamp) => keeper.record(event, stamp), handsFree);
      });
    const [needle, ...others] = this.needles;
    if (!needle) return;
    const reference = others.find(({ instrument: { name } }) => name === setup.reference?.name);
    keeper.use(needle, others, reference ? new Reference(reference) : null);
    // A finished survey holds no port.
    keeper.events$.subscribe(({ type }) => void (type === 'end' && this.#letGo()));
    for (const { instrument } of this.needles) void instrument.start();
  }

  /**
   * Begins a new survey; its recording is on disk when this returns. For practice one of the faults `practice` is planted in it, at
   * random, of those that such a survey can have.
   * @throws WayscribeError `profile.invalid`, `command.invalid` for a set-up that can't work, or of the recording
   */
  static async start(setup: Setup, tools: SurveyTools, practice: readonly Planted[] = []): Promise<Survey> {
    checkEnds(setup);
    checkSetup(setup, tools, ({ profile }) => tools.profiles.find(profile!));
    const planted = anyOf(plantableIn(setup).filter((fault) => practice.includes(fault)));
    const t = Date.now();
    const bench = benchFor(setup, t, tools.pace, planted);
    const id = await tools.store.newId(setup, t);
    const header: Header = {
      recording: 1,
      id,
      program: tools.program,
      t,
      setup,
      ...(setup.instrument.source === 'cable' && { profile: tools.profiles.find(setup.instrument.profile!) }),
      ...(setup.others && {
        otherProfiles: setup.others.map(({ profile }) => tools.profiles.find(profile!)),
      }),
      ...(bench && {
        simulated: {
          scenario: bench.state$.value.scenario,
          truthUm: bench.world.truthUm(),
          ...(planted && { planted }),
          ...(bench.plantedAt && { plantedAt: bench.plantedAt }),
        },
      }),
    };
    const writer = await RecordingWriter.create(tools.store.pathOf(id), header);
    return new Survey(new Keeper(header, [], writer), tools, bench);
  }

  /** Goes on with a recording, in the same file; what was torn off its end is on record. */
  static async resume(id: string, why: string, tools: SurveyTools): Promise<Survey> {
    const path = await tools.store.find(id);
    const { writer, end, torn } = await reopenRecording(path);
    try {
      const { header, events } = await readRecording(path, { skipReadings: true, until: end });
      checkSetup(header.setup, tools, (instrument) => profileFor(instrument, header, tools));
      const keeper = new Keeper(header, events, writer);
      await keeper.record({ type: 'resumed', why, ...(torn && { torn }) });
      const stood = keeper.session.takes.map(({ event }) => event.place);
      const bench = benchFor(header.setup, header.t, tools.pace, header.simulated?.planted, stood);
      return new Survey(keeper, tools, bench);
    } catch (error) {
      await writer.close().catch(() => {});
      throw error;
    }
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
    await this.#letGo();
    this.bench?.stop();
    await this.keeper.close();
  }

  async #letGo(): Promise<void> {
    await Promise.all(this.needles.map(({ instrument }) => instrument.stop()));
  }
}

function anyOf<T>(all: readonly T[]): T | undefined {
  return all[Math.floor(Math.random() * all.length)];
}

/**
 * @param t when the survey began: tells where a planted fault lies
 * @param pace how many times faster than usual it comes to rest
 * @param before where the instrument was set down before
 */
function benchFor(
  setup: Setup,
  t: number,
  pace: number,
  planted?: Planted,
  before: readonly Placement[] = [],
): SimulatedBench | null {
  return setup.instrument.port === simulatedPath && setup.instrument.source === 'cable'
    ? new SimulatedBench(setup, { pace, ...(planted && { planted, before, seed: t % 1e9 }) })
    : null;
}

/** The profile that the recording was begun with; the one of that name when its copy is of another form. */
function profileFor(instrument: InstrumentSetup, header: Header, tools: SurveyTools): Profile {
  const { profile, otherProfiles = [], setup } = header;
  const other = setup.others?.findIndex(({ name }) => name === instrument.name) ?? -1;
  const copy = profileSchema.safeParse(other < 0 ? profile : otherProfiles[other]);
  return copy.success ? copy.data : tools.profiles.find(instrument.profile!);
}

/** HIGH at an end means nothing when both ends have one name. */
function checkEnds(setup: Setup): void {
  if (!('farEnd' in setup) || setup.startEnd.toLowerCase() !== setup.farEnd.toLowerCase()) return;
  throw new WayscribeError(
    'command.invalid',
    'farEnd',
    `both ends are called ${setup.farEnd}`,
    'name them so that they can be told apart',
  );
}

function checkSetup(setup: Setup, tools: SurveyTools, find: (instrument: InstrumentSetup) => Profile): void {
  checkInstruments(setup);
  instrumentsOf(setup).forEach((instrument, k) => {
    checkInstrument(instrument, k === 0 ? 'instrument' : `others.${k - 1}`, tools, find);
  });
  const reference = referenceOf(setup)?.level;
  if (reference && find(reference).talk.kind === 'by-button') {
    throw new WayscribeError(
      'command.invalid',
      'reference',
      `${reference.name} speaks by its own button, and nobody presses it at every take`,
      'choose a level that speaks by itself',
    );
  }
}

function checkInstrument(
  instrument: InstrumentSetup,
  place: string,
  tools: SurveyTools,
  find: (instrument: InstrumentSetup) => Profile,
): void {
  if (instrument.source === 'typed') return;
  if (!instrument.port) {
    throw new WayscribeError(
      'command.invalid',
      `${place}.port`,
      'no port is chosen',
      'choose the port of the instrument',
    );
  }
  if (!instrument.profile) {
    throw new WayscribeError(
      'command.invalid',
      `${place}.profile`,
      'it is not said how the instrument talks',
      'choose it',
    );
  }
  channelFor(find(instrument), instrument.unit, instrument.channel);
  if (instrument.port === simulatedPath && !tools.demo) {
    throw new WayscribeError(
      'command.invalid',
      `${place}.port`,
      'is the simulated instrument',
      'run the demo for that',
    );
  }
}
