import { configDefaults, defineConfig } from 'vitest/config';

/** Tests that need more than the sources: a build, a browser, a spreadsheet program. */
const BUILT = ['tests/build/**/*.test.ts', 'tests/cli/**/*.test.ts'];
const BROWSER = ['tests/browser/**/*.test.ts'];
const SPREADSHEET = ['tests/spreadsheet/**/*.test.ts'];

export default defineConfig({
  define: { ARCHWRIGHT_VERSION: JSON.stringify('0.0.0-test') },
  test: {
    // Everything runs beside everything else on two cores: a limit is for what hangs, not for what is slow.
    testTimeout: 60_000,
    hookTimeout: 120_000,
    setupFiles: ['tests/seed.ts'],
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          // One memory for all files of a worker: a third of the time went into loading the same sources again.
          isolate: false,
          include: ['tests/**/*.test.ts'],
          exclude: [...configDefaults.exclude, ...BUILT, ...BROWSER, ...SPREADSHEET],
        },
      },
      { extends: true, test: { name: 'mutants', include: ['tests/mutants/run.ts'] } },
      {
        extends: true,
        test: { name: 'built', include: BUILT, testTimeout: 240_000, globalSetup: 'tests/build/build.ts' },
      },
      {
        extends: true,
        test: {
          name: 'browser',
          include: BROWSER,
          testTimeout: 240_000,
          hookTimeout: 240_000,
          fileParallelism: false,
          globalSetup: 'tests/build/build.ts',
        },
      },
      {
        extends: true,
        test: {
          name: 'spreadsheet',
          include: SPREADSHEET,
          testTimeout: 600_000,
          fileParallelism: false,
          maxConcurrency: 10,
        },
      },
    ],
  },
});
