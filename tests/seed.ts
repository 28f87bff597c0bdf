import fc from 'fast-check';

/**
 * The seed of all random tests. It is the same in every `npm test`, so that a failure is one of what was changed; long
 * runs draw another each time and print it (vitest.config.ts). SEED=… does a run again.
 */
export const SEED = Number(process.env.SEED);

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: SEED });
