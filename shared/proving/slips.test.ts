import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { random as seededRandom } from '../../tests/tools/random.ts';
import { fromInternal, type HeightUnit, type TiltUnit } from '../units.ts';
import { type Proving, provingSchema } from './proving.ts';
import { scaleVerdict } from './scale.ts';
import { likelySlip } from './slips.ts';

interface Planted {
  readonly reads: 'tilt' | 'height';
  /** Unit in which the instrument truly speaks. */
  readonly speaks: TiltUnit | HeightUnit;
  /** Unit that the person says. */
  readonly said: TiltUnit | HeightUnit;
  /** What the decimal point is off by. */
  readonly shift?: number;
}

/** A known step as an instrument with noise shows it, in the unit that it speaks. */
function tried({ reads, speaks, said, shift = 1 }: Planted, seed: number, noise = 0.002): Proving {
  const random = seededRandom(seed);
  const [stepUm, baseMm] = [100, 150];
  const trueStep = reads === 'tilt' ? (1000 * stepUm) / baseMm : stepUm;
  const size = shift * fromInternal(reads === 'tilt' ? 'tilt' : 'height', trueStep, speaks);
  const read = (value: number) => value + noise * size * random.normal();
  const start = 0.3 * size;
  const take = (pose: Proving['takes'][number]['pose'], value: number) => ({
    pose,
    value: read(value),
    spread: noise * size,
  });
  return provingSchema.parse({
    name: 'L2',
    reads,
    source: 'typed',
    unit: said,
    unitOpen: true,
    graduation: 1,
    resolution: size / 1e4,
    ...(reads === 'tilt' && { baseMm }),
    stepUm,
    stepIs: 'block',
    takes: [
      take('rest', start),
      take('moved', start + size / 3),
      take('flat', start),
      take('on-step', start + size),
    ],
  });
}

const seeds = fc.integer({ min: 1, max: 1e6 });

describe('each slip with units is refused and named, whichever way round it was made', () => {
  const slips: readonly (Planted & { readonly id: string; readonly words: string })[] = [
    {
      id: 'foot',
      reads: 'tilt',
      speaks: 'in/ft',
      said: 'in/10in',
      words: 'inches per foot were taken for inches per ten',
    },
    {
      id: 'foot',
      reads: 'tilt',
      speaks: 'in/10in',
      said: 'in/ft',
      words: 'inches per ten inches were taken for inches per foot',
    },
    { id: 'arcsec', reads: 'tilt', speaks: 'um/m', said: 'arcsec', words: 'µm/m were taken for arc seconds' },
    { id: 'arcsec', reads: 'tilt', speaks: 'arcsec', said: 'um/m', words: 'arc seconds were taken for µm/m' },
    { id: 'inch', reads: 'height', speaks: 'mm', said: 'in', words: 'mm were taken for inches' },
    { id: 'inch', reads: 'height', speaks: 'in', said: 'mm', words: 'inches were taken for mm' },
    {
      id: 'decimal',
      reads: 'height',
      speaks: 'um',
      said: 'um',
      shift: 10,
      words: '1 place too far to the right',
    },
    {
      id: 'decimal',
      reads: 'height',
      speaks: 'um',
      said: 'um',
      shift: 0.1,
      words: '1 place too far to the left',
    },
    { id: 'decimal', reads: 'tilt', speaks: 'mm/m', said: 'um/m', words: '3 places too far to the left' },
  ];
  test.each(slips)('$id: $speaks said to be $said', (planted) => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const verdict = scaleVerdict(tried(planted, seed));
        expect(verdict?.is).toBe('refused');
        expect(verdict?.slip?.id).toBe(planted.id);
        expect(verdict?.sentence).toContain(planted.words);
        // The unit that would be right is the one that it speaks.
        if (planted.shift === undefined) expect(verdict?.fits).toBe(planted.speaks);
      }),
      { verbose: 1 },
    );
  });
});

test('the right unit is never refused, whatever the unit', () => {
  const units = fc.constantFrom<Planted>(
    ...(['um/m', 'mm/m', 'arcsec', 'deg', 'mrad', 'in/ft', 'in/10in'] as const).map(
      (unit) => ({ reads: 'tilt', speaks: unit, said: unit }) as const,
    ),
    ...(['um', 'mm', 'in', 'uin'] as const).map(
      (unit) => ({ reads: 'height', speaks: unit, said: unit }) as const,
    ),
  );
  fc.assert(
    fc.property(units, seeds, (planted, seed) => {
      expect(scaleVerdict(tried(planted, seed))).toMatchObject({ is: 'good' });
    }),
    { verbose: 1 },
  );
});

test('more than a tenth off is refused, less is not, and a ratio that no slip makes has no name', () => {
  const off = (shift: number) =>
    scaleVerdict(tried({ reads: 'height', speaks: 'um', said: 'um', shift }, 1, 1e-4));
  expect(off(1.09)).toMatchObject({ is: 'good' });
  expect(off(0.91)).toMatchObject({ is: 'good' });
  for (const shift of [0.88, 1.12, 1.6, 3]) {
    const verdict = off(shift);
    expect(verdict).toMatchObject({ is: 'refused' });
    expect(verdict?.slip).toBeUndefined();
    expect(verdict?.sentence).toContain('none of the usual slips');
  }
});

test('no slip of a level is told of an indicator', () => {
  expect(likelySlip('height', 1.2, 0.02)).toBeNull();
  expect(likelySlip('height', 4.85, 0.02)).toBeNull();
});
