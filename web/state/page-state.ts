import type {
  Access,
  BenchState,
  InstrumentState,
  Live,
  SentError,
  SimulatedState,
} from '../../shared/messages.ts';
import type { Session } from '../../shared/session/fold.ts';
import type { Planted } from '../../shared/session/planted.ts';
import type { Placement } from '../../shared/survey/plan.ts';
import type { LanguageCode } from '../words/languages/languages.ts';
import type { Lit } from './lit.ts';
import type { Replay } from './replay.ts';
import type { TracePoint } from './settle-trace.ts';

export type Reference = 'ends' | 'leastSquares' | 'minimumZone';

/** What the person is pointing at: the question that stands in the place of the controls. */
export type Pointing =
  | { readonly at: 'nothing' }
  | { readonly at: 'setup' | 'proving' | 'compare' }
  | { readonly at: 'undo' | 'skip' | 'note' | 'finish' | 'conditions' | 'leave' }
  | { readonly at: 'place'; readonly place: Placement }
  | { readonly at: 'job'; readonly ask: JobQuestion };

/** What is asked about a job while its sheet gives way to the question. */
export type JobQuestion = 'next-round' | 'passes' | 'target' | 'print' | 'surface' | 'note';

/** The sheets of a job. */
export type JobSheet = 'rounds' | 'compare' | 'plan' | 'blue' | 'papers';

/** The job that lies open while no survey is on. Without a surface, the one that was worked on last. */
export interface OpenedJob {
  readonly id: string;
  readonly surface: string | null;
  readonly sheet: JobSheet;
}

export const nothing: Pointing = { at: 'nothing' };

/** Everything the page shows: what the daemon told, and what the person points at. */
export interface PageState {
  readonly link: 'connecting' | 'open' | 'lost';
  readonly program: string;
  readonly mode: 'serve' | 'demo';
  /** False until the first `hello`: then nothing is known and nothing is shown. */
  readonly greeted: boolean;
  readonly access: Access;
  /** Devices in the network are let in. */
  readonly lan: boolean;
  /** The list of paired devices lies open. */
  readonly devices: boolean;
  /** The code with which this device came to be paired was refused. */
  readonly pairingFailed: boolean;
  readonly session: Session | null;
  readonly instruments: readonly InstrumentState[];
  readonly simulated: SimulatedState | null;
  /** The recording that this page plays, while nothing is taken, and the page that comes back when it is closed. */
  readonly replay: Replay | null;
  readonly behind: PageState | null;
  readonly live: Live | null;
  /** Ports that are listened to while no survey is on. */
  readonly bench: BenchState | null;
  /** The newest of every needle: of a survey by instrument, of the bench by stream. */
  readonly needles: Readonly<Record<string, Live>>;
  /** Page clock at the last live message, ms; null when none came since the page opened. */
  readonly heardAt: number | null;
  readonly trace: readonly TracePoint[];
  readonly refusal: SentError | null;
  /** The field for typed readings was left with Escape, to have the keys of the page. */
  readonly fieldLeft: boolean;
  readonly pointing: Pointing;
  readonly job: OpenedJob | null;
  readonly reference: Reference;
  /** What the person believes was planted in a survey for practice. */
  readonly guess: Planted | null;
  readonly working: boolean;
  /** What is being explained in the working. */
  readonly lit: Lit | null;
  readonly truth: boolean;
  /** A plate is shown as a relief in place of its plan. */
  readonly relief: boolean;
  /** What to scrape stands in the place of the profiles of a bed. */
  readonly passes: boolean;
  /** The help lies over the sheet. */
  readonly help: boolean;
  /** Id of the session whose list of things to do first was put away. */
  readonly putAway: string | null;
  /** The next place is said aloud. */
  readonly speech: boolean;
  readonly muted: boolean;
  readonly theme: 'paper' | 'slate';
  readonly language: LanguageCode;
}

export const initialState: PageState = {
  link: 'connecting',
  program: '',
  mode: 'serve',
  greeted: false,
  access: 'local',
  lan: false,
  devices: false,
  pairingFailed: false,
  session: null,
  instruments: [],
  simulated: null,
  replay: null,
  behind: null,
  live: null,
  bench: null,
  needles: {},
  heardAt: null,
  trace: [],
  refusal: null,
  fieldLeft: false,
  pointing: nothing,
  job: null,
  reference: 'ends',
  guess: null,
  working: false,
  lit: null,
  truth: false,
  relief: false,
  passes: false,
  help: false,
  putAway: null,
  speech: false,
  muted: false,
  theme: 'paper',
  language: 'en',
};

/** Whether this page may do more than watch. */
export function mayControl({ access }: Pick<PageState, 'access'>): boolean {
  return access !== 'watching';
}

/** Where the level is being used: the next placement, or the last one when all are done. */
export function placeNow(session: Session): Placement | null {
  return session.next ?? session.takes.at(-1)?.event.place ?? null;
}

/** The place that the open question is about, to be marked in the drawing. */
export function pointedAt({ pointing, session }: PageState): Placement | null {
  switch (pointing.at) {
    case 'place':
      return pointing.place;
    case 'undo':
      return (session && lastTake(session)?.event.place) ?? null;
    case 'skip':
      return session?.next ?? null;
    default:
      return null;
  }
}

/** The take that undo would take back: the last one that still counts. */
export function lastTake(session: Session): Session['takes'][number] | null {
  return session.takes.findLast((take) => take.out === undefined) ?? null;
}
