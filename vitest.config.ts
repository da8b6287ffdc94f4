import { defineConfig } from 'vitest/config';

/**
 * Files that put something in place of a part of Node, which must not reach any other file; and those that call a few
 * functions of the geometry a million times, which the engine compiles worse for every other use that it has seen of them.
 */
const ALONE = [
  'tests/faults/kept-pages.test.ts',
  'tests/faults/changing-file.test.ts',
  'tests/geometry/**/*.test.ts',
  'tests/physical/honest-figures.test.ts',
];

const common = {
  // No test is decided by a clock: these only end one that hangs.
  testTimeout: 600_000,
  hookTimeout: 600_000,
  env: { TZ: 'Pacific/Kiritimati', LC_ALL: 'C' },
};

export default defineConfig({
  test: {
    globalSetup: ['tests/global-setup.ts'],
    maxWorkers: 2,
    projects: [
      {
        test: {
          ...common,
          name: 'together',
          // The program keeps nothing outside of what a test makes, so the files of a worker share what they load.
          isolate: false,
          include: ['tests/**/*.test.{ts,tsx}'],
          exclude: ['tests/bench/**', ...ALONE],
          benchmark: { include: ['tests/bench/**/*.bench.ts'] },
        },
      },
      { test: { ...common, name: 'alone', include: ALONE, benchmark: { include: [] } } },
    ],
  },
});
