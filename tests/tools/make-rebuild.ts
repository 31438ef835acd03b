import { rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { addFile } from '../../daemon/job/add-file.ts';
import { JobFolder } from '../../daemon/job/job-folder.ts';
import type { NewEvent } from '../../shared/session/events.ts';
import type { Session } from '../../shared/session/fold.ts';
import { resultOf } from '../../shared/session/result.ts';
import type { SheetInput } from '../../shared/sheet/sheet.ts';
import { random } from './random.ts';
import { rebuildSummary, rebuildWay } from './rebuild.ts';
import { wornFrontWay } from './worn-front-way.ts';

/** Makes the job in recordings/rebuild/ anew: `npm run rebuild`. Everything in it is invented. */
const path = 'recordings/rebuild';
const begun = Date.UTC(2026, 2, 2, 8, 0, 0);
const day = 86_400_000;
const by = 'first shift';
const at = (days: number) => new Date(begun + days * day).toISOString();

await rm(path, { recursive: true, force: true });
const folder = await JobFolder.create(path, { part: wornFrontWay.setup.part, owner: 'invented' });

const tailstockWay = 'tailstock way';
const overThePins = [0, -3, -8, -13, -11, -5, 0];
await folder.add({ at: at(-1), by, change: 'note', text: 'Limits agreed before the work began.' });
const { foreseen, rounds, bites } = await rebuildWay(folder, { ...wornFrontWay, t: begun, also: printOf });
await folder.add({ at: at(6), by, change: 'surface', surface: tailstockWay, madeFrom: ['front way'] });
await addSheet('as found', overThePins, 6);
await folder.add(
  {
    at: at(6),
    by,
    change: 'limits',
    surface: tailstockWay,
    limits: [
      { figure: `${tailstockWay}.straightness`, max: 12, source: 'agreed with the customer, 27 February' },
    ],
  },
  {
    at: at(7),
    by,
    change: 'passes',
    surface: tailstockWay,
    passes: [
      ['T0', 'T6'],
      ['T0', 'T1', 'T5', 'T6'],
    ],
  },
);
await addSheet('as left', [0, 1, -1, -4, -3, 0, 0], 7);
await writeFile(`${path}.summary.json`, `${JSON.stringify(await rebuildSummary(folder), null, 1)}\n`);
console.log(
  `${path}: ${foreseen} rounds foreseen, ${rounds} taken, bites ${bites.map(({ biteUm }) => biteUm.toFixed(2))}`,
);

/** A print on the numbers' own stations; in the first round a very high spot is rubbed clean. */
function printOf(session: Session): NewEvent[] {
  if (session.setup.round === 'as found') return [];
  const { contact } = Object.values(resultOf(session).metal)[0]!;
  const rubbed = session.setup.round === 'in work 1' ? contact.restsOn[0] : undefined;
  const stations = Object.fromEntries(
    session.plan.stations.map(({ name }) => {
      const shows = contact.inked.includes(name) && name !== rubbed;
      return [
        name,
        shows ? { shows, pointsPerInch2: 12 + (session.takes.length % 5), coverage: 0.5 } : { shows },
      ];
    }),
  );
  const hingesMm = session.setup.round === 'as left' ? [520, 1270] : [60, 1740];
  return [{ type: 'print', against: 'camelback straightedge 2', stations, hingesMm }];
}

/** A sheet as it comes from a notebook: a level read by eye, 200 mm foot to foot. */
async function addSheet(round: string, heightsUm: readonly number[], days: number): Promise<void> {
  const noise = random(17 + days);
  const stations = heightsUm.map((_, k) => `T${k}`);
  const sheet: SheetInput = {
    sheet: 1,
    kind: 'way',
    part: wornFrontWay.setup.part,
    phase: round,
    stations: Object.fromEntries(stations.map((name, k) => [name, [200 * k, 0]])),
    lines: { [tailstockWay]: stations },
    walks: [1, 2].map((time) => ({
      id: `walk ${time}`,
      sigma: 3,
      readings: stations.slice(1).map((name, k): [string, string, number] => {
        const slope = (heightsUm[k + 1]! - heightsUm[k]!) / 0.2;
        return [stations[k]!, name, Math.round(slope + 24 + 2 * noise.normal())];
      }),
    })),
  };
  const file = join(tmpdir(), `${tailstockWay} ${round}.json`);
  await writeFile(file, `${JSON.stringify(sheet, null, 1)}\n`);
  await addFile(folder, file, { by, at: at(days) });
  await rm(file);
}
