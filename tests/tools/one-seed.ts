import fc from 'fast-check';

/**
 * Properties are tried with the same values on every machine, so that a run tells of a change and not of its luck;
 * `PROPERTY_SEED=…` tries others, and so may whoever looks for more. What fails says its own seed.
 */
fc.configureGlobal({ seed: Number(process.env.PROPERTY_SEED ?? 20_261_125) });
