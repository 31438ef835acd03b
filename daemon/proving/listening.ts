import { Subject } from 'rxjs';
import type { BenchState, Live, WantedPort } from '../../shared/messages.ts';
import type { SurveyTools } from '../session/survey.ts';
import { Ear } from './ear.ts';

/** The ports that pages want to be listened to while no survey is on. */
export class Listening {
  readonly changed$ = new Subject<void>();
  readonly live$ = new Subject<Live>();
  readonly #tools: Pick<SurveyTools, 'profiles' | 'makePort'>;
  #ears: readonly Ear[] = [];

  constructor(tools: Pick<SurveyTools, 'profiles' | 'makePort'>) {
    this.#tools = tools;
  }

  /** What is heard now; null when nothing is listened to. */
  get state(): BenchState | null {
    return this.#ears.length > 0 ? { ports: this.#ears.map(({ state }) => state) } : null;
  }

  /**
   * Listens to exactly these ports. One that is wanted as before goes on undisturbed.
   * @throws WayscribeError `profile.invalid` when a profile is not there; then everything stays as it was
   */
  async listen(wanted: readonly WantedPort[]): Promise<void> {
    for (const { profile } of wanted) if (profile !== undefined) this.#tools.profiles.find(profile);
    const kept = this.#ears.filter((ear) => wanted.some((one) => isSame(one, ear.wanted)));
    const left = this.#ears.filter((ear) => !kept.includes(ear));
    this.#ears = kept;
    await Promise.all(left.map((ear) => ear.stop()));
    const fresh = wanted
      .filter((one) => !kept.some((ear) => isSame(one, ear.wanted)))
      .map((one) => new Ear(one, this.#tools.profiles, this.#tools.makePort(one.port)));
    for (const ear of fresh) {
      ear.changed$.subscribe(() => this.changed$.next());
      ear.live$.subscribe((live) => this.live$.next(live));
    }
    this.#ears = [...kept, ...fresh];
    this.changed$.next();
    await Promise.all(fresh.map((ear) => ear.start()));
  }

  async close(): Promise<void> {
    await this.listen([]);
  }
}

function isSame(a: WantedPort, b: WantedPort): boolean {
  return a.port === b.port && a.profile === b.profile && a.quiet === b.quiet;
}
