import { demoSetups } from '../../shared/session/demo-setups.ts';
import type { Setup } from '../../shared/session/setup.ts';
import { sagUm } from '../../shared/survey/sag.ts';
import type { Scene } from './world.ts';

export { demoSetups };
/** The demo that is shown first. */
export const demoSetup = demoSetups.way;

/** Over the pins of the demo's dovetail, where it is not worn, µm. */
const overPinsUm = 67_300;

/** Diameter of the first collar of the demo, µm. */
const collarUm = 40_000;

/** The true shape of each kind of demo survey; all of it is invented. */
export function demoScene(setup: Setup): Scene {
  switch (setup.kind) {
    case 'way':
      // A later round finds metal that the scraper has been over.
      return setup.round === 'as found'
        ? wornBed(setup.lengthMm)
        : { name: 'a way that was scraped', surface: (x) => 0.45 * wornWay(x / setup.lengthMm) + 0.03 * x };
    case 'bed':
      return wornBed(setup.lengthMm);
    case 'plate':
      return {
        name: 'a plate with a drooping corner',
        surface: (x, y) => plate(x / setup.lengthMm, y / setup.widthMm),
      };
    case 'slide':
      return {
        name: 'a slide with taper',
        surface: (x, y) => (y > 0 ? -5 : 8) * (x / setup.travelMm) + 2.5 * Math.sin((3 * x) / setup.travelMm),
      };
    case 'straightedge':
      return {
        name: 'a worn way under a bowed straightedge',
        surface: (x) => 0.6 * wornWay(x / setup.lengthMm),
        artefact: (x) => -4 * Math.sin((Math.PI * x) / setup.lengthMm),
        setUp: (turned) => (turned ? -27 : 41),
      };
    case 'square':
      return {
        name: 'a knee out of square',
        surface: (x) => 0.021 * x + 1.2 * Math.sin((Math.PI * x) / setup.lengthMm),
        artefact: (x) => 0.013 * x,
      };
    case 'bar':
      return {
        name: 'a spindle that points up and away',
        surface: (x, y) => (y > 0 ? -0.012 : 0.024) * x,
        artefact: (x) => 3 + 0.01 * x,
        sag: (x) => sagUm(setup, x),
      };
    case 'dovetail':
      return {
        name: 'a dovetail that is worn in the middle',
        surface: (x) => overPinsUm - 14 * Math.sin((Math.PI * x) / setup.lengthMm) + 0.01 * x,
      };
    case 'repeat':
      return {
        name: 'a plate that is worn in one place',
        surface: (x, y) =>
          -2.5 *
          Math.exp(-(((x - 0.4 * setup.lengthMm) / 240) ** 2) - ((y - 0.3 * setup.widthMm) / 200) ** 2),
      };
    case 'collars':
      return { name: 'a headstock that points aside', surface: (x) => collarUm + 0.045 * x };
    case 'face':
      return {
        name: 'a face that is turned hollow',
        surface: (x) => (0.06 * Math.abs(2 * x - setup.lengthMm)) / 2,
        setUp: () => 17,
      };
  }
}

function wornBed(lengthMm: number): Scene {
  return {
    name: 'a worn bed',
    surface: (x, y) => wornWay(x / lengthMm) + 0.03 * x + wind(x, y, lengthMm),
  };
}

/** Hollow where the carriage has worked most, a third of the way from the headstock, a little proud towards the tail. */
function wornWay(x: number): number {
  const wear = -16 * Math.exp(-(((x - 0.32) / 0.17) ** 2));
  const proud = 3.5 * Math.exp(-(((x - 0.78) / 0.12) ** 2));
  return wear + proud + 0.8 * Math.sin(21 * x);
}

/** The rear way of the bed is worn less, and its tail stands high. */
function wind(xMm: number, yMm: number, lengthMm: number): number {
  if (yMm === 0) return 0;
  const x = xMm / lengthMm;
  return 0.04 * yMm + 6.5 * x ** 1.6 + 7 * Math.exp(-(((x - 0.3) / 0.2) ** 2));
}

function plate(x: number, y: number): number {
  const dome = 4 * Math.exp(-(((x - 0.42) / 0.4) ** 2) - ((y - 0.45) / 0.4) ** 2);
  const droop = -3.2 * Math.exp(-(((x - 1) / 0.3) ** 2) - (y / 0.35) ** 2);
  return dome + droop + 9 * x - 4 * y;
}
