import type { Setup } from '../../shared/session/setup.ts';
import type { HeightRun, Placement, Plan, PlannedStation } from '../../shared/survey/plan.ts';
import { planFor } from '../../shared/survey/plan-for.ts';

/** True height of a surface over its plan: mm along, mm across → µm. */
export type Surface = (xMm: number, yMm: number) => number;

/** What a simulated survey is about: the true shape of the metal, and the error of what it is read against. */
export interface Scene {
  readonly name: string;
  readonly surface: Surface;
  /** Error of a straightedge, square or bar along its length, mm → µm; nought when left out. */
  readonly artefact?: (xMm: number) => number;
  /** How far a bar hangs down from true at each place, in its top plane, mm → µm; nought when left out. */
  readonly sag?: (xMm: number) => number;
  /** How far off parallel the straightedge was set up by eye, turned over or not, µm/m; nought when left out. */
  readonly setUp?: (turned: boolean) => number;
}

/** The metal under a simulated instrument. */
export class World {
  readonly scene: Scene;
  readonly plan: Plan;
  readonly #stations: ReadonlyMap<string, PlannedStation>;

  constructor(setup: Setup, scene: Scene) {
    this.scene = scene;
    this.plan = planFor(setup);
    this.#stations = new Map(this.plan.stations.map((station) => [station.name, station]));
  }

  /** True height of every station of the plan, µm. */
  truthUm(): Record<string, number> {
    return Object.fromEntries(this.plan.stations.map(({ name }) => [name, this.#height(name)]));
  }

  /**
   * What a perfect instrument reads on a placement, in µm/m or µm: a level by the rise between its feet, an
   * indicator by the metal under its tip and the error of what carries it.
   */
  reading({ run, at }: Placement): number {
    const planned = this.plan.runs.find(({ id }) => id === run)!;
    if (planned.reads === 'tilt') return this.#tilt(planned.facing, at);
    const { xMm, yMm } = this.#stations.get(at[0])!;
    return this.#depth(planned, xMm, yMm);
  }

  /** What a perfect indicator reads between two placements of a sweep: `share` of the way from one to the other. */
  readingBetween(from: Placement, to: Placement, share: number): number {
    const planned = this.plan.runs.find(({ id }) => id === from.run)!;
    const [a, b] = [this.#stations.get(from.at[0])!, this.#stations.get(to.at[0])!];
    if (planned.reads === 'tilt') throw new Error('a level is not slid on');
    return this.#depth(planned, a.xMm + share * (b.xMm - a.xMm), a.yMm);
  }

  #tilt(facing: 1 | -1, [from, to]: readonly string[]): number {
    const [a, b] = [this.#stations.get(from!)!, this.#stations.get(to!)!];
    const apartMm = Math.hypot(b.xMm - a.xMm, b.yMm - a.yMm);
    return (facing * 1000 * (this.#height(to!) - this.#height(from!))) / apartMm;
  }

  #depth({ artefact, sense, line, slope }: HeightRun, xMm: number, yMm: number): number {
    const error = artefact ? (this.scene.artefact?.(xMm) ?? 0) : 0;
    const sag = line === 'top' ? (this.scene.sag?.(xMm) ?? 0) : 0;
    const turned = artefact?.turned ?? false;
    const setUp = slope === 'free' ? ((this.scene.setUp?.(turned) ?? 0) * xMm) / 1000 : 0;
    return sense * (this.scene.surface(xMm, yMm) - sag) + (turned ? -error : error) + setUp;
  }

  #height(name: string): number {
    const { xMm, yMm } = this.#stations.get(name)!;
    return this.scene.surface(xMm, yMm);
  }
}
