import fc from 'fast-check';
import { expect, test } from 'vitest';
import { progressOf } from './progress.ts';
import { unprovable } from './provable.ts';
import { type Proving, posesIn, provingSchema } from './proving.ts';
import { stepInCounts } from './scale.ts';

function proving(more: object): Proving {
  return provingSchema.parse({
    name: 'I1',
    reads: 'height',
    source: 'typed',
    unit: 'um',
    unitOpen: true,
    graduation: 10,
    resolution: 0.2,
    stepUm: 100,
    stepIs: 'block',
    takes: [],
    ...more,
  });
}

/** What a perfect instrument reads of sign and step. */
function perfect(one: Proving): Proving {
  const far = 1e6;
  const values = [0, far, 0, stepInCounts(one)];
  const poses = [...posesIn('sign'), ...posesIn('scale')];
  return { ...one, takes: poses.map((pose, k) => ({ pose, value: values[k]!, spread: null })) };
}

const instruments = fc.record({
  reads: fc.constantFrom('tilt', 'height'),
  graduation: fc.double({ min: 0.01, max: 1000, noNaN: true }),
  resolution: fc.double({ min: 0.001, max: 2, noNaN: true }),
  baseMm: fc.double({ min: 3, max: 1000, noNaN: true }),
  stepUm: fc.double({ min: 1, max: 5000, noNaN: true }),
  stepIs: fc.constantFrom('feeler', 'block'),
});
const of = (one: Record<string, unknown>) => proving({ ...one, unit: one.reads === 'tilt' ? 'um/m' : 'um' });

test('a step is asked back exactly when a perfect instrument would not be proved by it', () => {
  fc.assert(
    fc.property(instruments, (one) => {
      const asked = unprovable(of(one)) !== null;
      const verdict = progressOf(perfect(of(one))).verdicts.find(({ step }) => step === 'scale');
      expect(verdict?.is === 'good').toBe(!asked);
    }),
    { seed: 1, numRuns: 2000 },
  );
});

test('the step that is named would do, and one a little smaller would not', () => {
  fc.assert(
    fc.property(instruments, (one) => {
      const trouble = unprovable(of(one));
      fc.pre(trouble?.is === 'too-small');
      for (const [stepIs, stepUm] of [
        ['feeler', trouble.feelerUm] as const,
        ['block', trouble.blockUm] as const,
      ]) {
        if (stepUm === null) continue;
        expect(unprovable(of({ ...one, stepIs, stepUm }))).toBeNull();
        expect(unprovable(of({ ...one, stepIs, stepUm: 0.99 * stepUm }))).not.toBeNull();
      }
    }),
    { seed: 2, numRuns: 500 },
  );
});

test('a step beyond the range is asked back with the largest that would do', () => {
  const far = unprovable(proving({ stepUm: 20_000 }), { range: [-500, 500] });
  // Constructed: 0.9 of 1000 counts of 10 µm.
  expect(far).toEqual({ is: 'too-large', mostUm: expect.closeTo(9000, 6) });
  expect(unprovable(proving({ stepUm: 8999 }), { range: [-500, 500] })).toBeNull();
});

test('a needle that is known to be unquiet needs a larger step', () => {
  expect(unprovable(proving({}))).toBeNull();
  expect(unprovable(proving({}), { noise: 1 })).toMatchObject({ is: 'too-small' });
});
