import fc from 'fast-check';

/**
 * Property tests draw the same cases at every run, so that a failure is the change's doing; `FC_SEED=7 npm test` draws
 * others.
 */
fc.configureGlobal({ seed: Number(process.env['FC_SEED'] ?? 1) });
