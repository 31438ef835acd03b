import type { Subscription } from 'rxjs';
import { WayscribeError } from '../../shared/errors.ts';
import type { Sample } from '../../shared/live/steadiness.ts';
import {
  evenMoments,
  halfWidthMs,
  type Passed,
  passedAt,
  type SweepBy,
  sinceMoment,
} from '../../shared/live/sweeping.ts';
import type { TakenBy } from '../../shared/session/events.ts';
import { type Placement, placeWords } from '../../shared/survey/plan.ts';
import type { Needle } from './needle.ts';

/** More readings than this are kept between two marks of no sweep. */
const longestTrail = 500_000;

/** A station that the tip has passed. */
export interface Station {
  readonly place: Placement;
  readonly atM: number;
  readonly passed: Passed;
  readonly by: TakenBy;
}

interface Mark {
  readonly m: number;
  readonly by: TakenBy;
}

/** What a sweep tells: stations that were passed, or why it can't go on. */
export interface SweepListener {
  passed(stations: readonly Station[]): void;
  broken(why: WayscribeError): void;
}

/** Listens to a needle while the tip slides on, and tells the stations that were marked, once all their readings have come. */
export class Sweeping {
  readonly run: string;
  readonly by: SweepBy;
  readonly #listener: SweepListener;
  readonly #subscription: Subscription;
  #trail: Sample[] = [];
  #due: {
    readonly places: readonly Placement[];
    readonly moments: readonly number[];
    readonly mark: Mark;
  } | null = null;
  #first: Mark | null = null;

  constructor(run: string, by: SweepBy, needle: Needle, listener: SweepListener) {
    this.run = run;
    this.by = by;
    this.#listener = listener;
    this.#subscription = needle.shown$.subscribe((sample) => this.#hear(sample));
  }

  /** Whether the first of two marks is made. */
  get begun(): boolean {
    return this.#first !== null;
  }

  /** Why no mark can be made now: the one before it is not read yet; null when it can. */
  refusal(next: Placement): WayscribeError | null {
    return this.#due
      ? new WayscribeError(
          'take.swept',
          placeWords(next),
          'the mark before it is not read yet',
          'slide more slowly',
        )
      : null;
  }

  /** The tip passed the first of `places` at this mark; at an even pace the second mark means the last of them. */
  mark(places: readonly Placement[], mark: Mark): void {
    if (this.by === 'marks') this.#due = { places: places.slice(0, 1), moments: [mark.m], mark };
    else if (!this.#first) this.#first = mark;
    else this.#due = { places, moments: evenMoments(this.#first.m, mark.m, places.length), mark };
  }

  stop(): void {
    this.#subscription.unsubscribe();
  }

  #hear(sample: Sample | null): void {
    if (sample) this.#trail.push(sample);
    if (!sample) this.#break('the stream of readings broke off');
    else if (this.#trail.length > longestTrail) this.#break('it took too long');
    else if (this.#due) this.#look();
    else if (!this.#first) this.#trail = [...sinceMoment(this.#trail, sample.m)];
  }

  #look(): void {
    const { places, moments, mark } = this.#due!;
    const [first, second] = moments;
    const half = halfWidthMs(second === undefined ? undefined : second - first!);
    const read = moments.map((m) => passedAt(this.#trail, m, half));
    if (read.includes('early')) return;
    const thin = read.indexOf('thin');
    if (thin >= 0) {
      this.#break(`the tip went over ${placeWords(places[thin]!)} so fast that too few readings came`);
      return;
    }
    this.#due = null;
    this.#first = null;
    this.#listener.passed(
      read.map((passed, k) => ({
        place: places[k]!,
        atM: moments[k]!,
        passed: passed as Passed,
        by: mark.by,
      })),
    );
  }

  #break(why: string): void {
    this.stop();
    this.#listener.broken(
      new WayscribeError('take.swept', 'sweep', why, 'begin the sweep again where it broke off'),
    );
  }
}
