import { shippedProfiles } from '../../protocols/shipped.ts';
import { fuzz, fuzzLine } from './fuzz-run.ts';

/** The long run: `npm run fuzz` sends a million frames with random damage, `npm run fuzz SEED` the same ones again. */
const seed = Number(process.argv[2] ?? Date.now() % 1_000_000);
const each = Math.ceil(1_000_000 / shippedProfiles.length);
console.log(`seed ${seed}`);
for (const profile of shippedProfiles) {
  const count = fuzz(profile, each, seed);
  console.log(fuzzLine(profile.id, count));
  if (count.notWhole > 0) process.exitCode = 1;
  if (count.allowed !== null && count.wrong > count.allowed + 4 * Math.sqrt(count.allowed))
    process.exitCode = 1;
}
