import type { EventOf } from '../session/events.ts';
import type { Result } from '../sheet/result.ts';
import { type JobSurvey, linesUnder } from './survey.ts';

type Contact = Result['metal'][string]['contact'];
/** A print, whether it was recorded during a survey or in the job after it. */
export type Print = Omit<EventOf<'print'>, 'type' | 'seq' | 't' | 'm'>;

/** What a flat reference should have printed by the numbers, beside what it printed. Neither overrules the other. */
export interface BlueAndNumbers {
  readonly stations: readonly {
    readonly name: string;
    readonly expected: boolean;
    readonly shows: boolean;
  }[];
  readonly agree: boolean;
  /** Causes to look for, likely ones first; empty when they agree. */
  readonly causes: readonly string[];
}

/**
 * The print on record against the contact preview of the survey. Only stations that the print speaks of are compared.
 */
export function blueAndNumbers(contact: Contact, names: readonly string[], print: Print): BlueAndNumbers {
  const inked = new Set(contact.inked);
  const stations = names.flatMap((name) => {
    const seen = print.stations[name];
    return seen ? [{ name, expected: inked.has(name), shows: seen.shows }] : [];
  });
  const bare = stations.filter(({ expected, shows }) => expected && !shows).map(({ name }) => name);
  const surplus = stations.filter(({ expected, shows }) => !expected && shows).map(({ name }) => name);
  return {
    stations,
    agree: bare.length + surplus.length === 0,
    causes: [...causesOfBare(bare, contact, stations), ...causesOfSurplus(surplus)],
  };
}

/** The same for a whole survey, which may be of several lines. */
export function blueOnSurvey(
  survey: Pick<JobSurvey, 'sheet' | 'heights' | 'result'>,
  print: Print,
): BlueAndNumbers {
  const metals = Object.entries(survey.result.metal);
  const none: Contact = { restsOn: [], inked: [] };
  const parts =
    metals.length > 0
      ? metals.map(([name, { contact }]) =>
          blueAndNumbers(contact, [...new Set(linesUnder(survey, name).flat())], print),
        )
      : [blueAndNumbers(none, survey.heights.names, print)];
  return {
    stations: parts.flatMap(({ stations }) => stations),
    agree: parts.every(({ agree }) => agree),
    causes: [...new Set(parts.flatMap(({ causes }) => causes))],
  };
}

/** Causes by shop talk (common practice, no source). */
function causesOfBare(
  bare: readonly string[],
  { restsOn }: Contact,
  stations: BlueAndNumbers['stations'],
): string[] {
  if (bare.length === 0) return [];
  const list = bare.join(', ');
  const ends = [stations[0]?.name, stations.at(-1)?.name];
  const causes: string[] = [];
  if (bare.some((name) => restsOn.includes(name))) {
    causes.push(
      `${list}: a very high spot is rubbed clean of ink; look for a bright middle with an inked rim.`,
    );
  }
  if (bare.some((name) => ends.includes(name))) {
    causes.push(`${list}: the reference may be shorter than the surface and not reach there.`);
  }
  causes.push('The ink may lie unevenly, or too thin: roll it out anew and print again.');
  const expected = stations.filter((station) => station.expected);
  if (bare.length === expected.length) {
    causes.push('A clearance face may touch before the bearing face: check with a thin shim.');
  }
  return causes;
}

function causesOfSurplus(surplus: readonly string[]): string[] {
  if (surplus.length === 0) return [];
  return [
    `${surplus.join(', ')}: the ink may be too thick and reach low ground.`,
    'The reference may have rocked, or be bowed by the warmth of hands: let it rest and print again.',
    'The survey may be wrong there: read these stations again.',
  ];
}

export type HingeShape = 'flat' | 'crown' | 'hollow';

/**
 * The shape that the hinge points speak of: a flat piece turns about 0.3 of its length from each end, a crowned one
 * near the middle, a hollow one near its ends (common practice, no source). Null without a hinge point.
 */
export function hingeShape(hingesMm: readonly number[], startMm: number, endMm: number): HingeShape | null {
  if (hingesMm.length === 0) return null;
  const share = hingesMm.map((x) => Math.min(x - startMm, endMm - x) / (endMm - startMm));
  const mean = share.reduce((sum, each) => sum + each, 0) / share.length;
  if (mean < 0.18) return 'hollow';
  return mean > 0.4 ? 'crown' : 'flat';
}
