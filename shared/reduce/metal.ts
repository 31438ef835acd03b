import type { Line } from '../figures/line.ts';
import { lineReference } from '../figures/line-reference.ts';
import { planeReference } from '../figures/plane-reference.ts';
import type { Reference } from '../figures/reference.ts';
import { areaMetal } from '../metal/area-metal.ts';
import { lineMetal } from '../metal/line-metal.ts';
import type { Metal, TargetSpec } from '../metal/metal.ts';
import { planPasses } from '../metal/passes.ts';
import type { Result } from '../sheet/result.ts';
import type { Sheet } from '../sheet/schema.ts';
import type { Surveyed } from './surveyed.ts';

/** What is wished when the sheet does not say. */
const plainTarget: TargetSpec = { shape: 'flat', crownUm: 0, tilt: 'free', biteUm: 5, stopPasses: 0 };
/** Kinds whose stations stand on metal that is scraped; the others are only if a target is named. */
const scraped: ReadonlySet<Sheet['kind']> = new Set(['way', 'bed', 'plate', 'slide']);

/** What to scrape off, by line or for the plate, as a suggestion. */
export function metalOf(
  sheet: Sheet,
  { heights, lines, area, lineReference: kind, planeReference: plane }: Surveyed,
): { metal: Result['metal']; notes: string[] } {
  if (!sheet.target && !scraped.has(sheet.kind)) return { metal: {}, notes: [] };
  const spec = sheet.target ?? plainTarget;
  const motion = againstMotion(sheet);
  const unplanned = { ...spec, stopPasses: Number.POSITIVE_INFINITY };
  const found: [string, Metal][] =
    sheet.kind === 'plate'
      ? [['plate', areaMetal(heights, area, planeReference(plane, area), unplanned)]]
      : Object.entries(lines).map(([name, line]) => [
          name,
          lineMetal(heights, line, motion ? motionOf(line) : lineReference(kind, line), unplanned),
        ]);
  const notes = sheet.target
    ? []
    : [
        `No target was named: flat, lying as it likes, ${spec.biteUm} µm a pass was taken for the metal to scrape.`,
      ];
  if (motion && spec.tilt === 'fixed') notes.push('The target of fixed tilt is parallel to the motion.');
  if (spec.shape === 'flat' && spec.crownUm > 0) {
    notes.push(`The target is flat, so its crown of ${spec.crownUm} µm was left out of account.`);
  }
  const metal = found.map(([name, each]) => [name, resultOf(each, spec)] as const);
  for (const [name, { plan, stations }] of metal) {
    if (plan.length === 0 && mostPasses(Object.values(stations)) > mostPlanned) {
      notes.push(
        `${name} needs over ${mostPlanned} passes: that is work for a machine, so no plan was made.`,
      );
    }
  }
  return { metal: Object.fromEntries(metal), notes };
}

/** Whether heights are over a motion that the indicator was carried along, so that their tilt is known. */
function againstMotion({ walks, sweeps }: Sheet): boolean {
  return walks.length === 0 && sweeps.every(({ slope, artefact }) => slope === 'known' && !artefact);
}

/** Nothing is taken off: a target shifted from here is parallel to the motion. */
function motionOf({ stations }: Line): Reference {
  return { stations, basis: [], parameters: [] };
}

/** Nobody scrapes more passes than this; a plan of millions would only fill the memory. */
const mostPlanned = 1000;

function mostPasses(removals: readonly { readonly passes: number }[]): number {
  return removals.reduce((most, { passes }) => Math.max(most, passes), 0);
}

function resultOf({ target, stations, contact }: Metal, { stopPasses }: TargetSpec): Result['metal'][string] {
  const removals = Object.values(stations);
  const passes = removals.map((removal) => removal.passes);
  const plan =
    mostPasses(removals) > mostPlanned ? [] : planPasses(Object.keys(stations), passes, stopPasses);
  return {
    target,
    stations,
    plan: plan.map((pass) => ({ pass: pass.pass, stations: [...pass.stations] })),
    contact: { restsOn: [...contact.restsOn], inked: [...contact.inked] },
  };
}
