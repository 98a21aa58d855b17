import { defineConfig } from 'vitest/config';

/**
 * Two projects: `unit` stays well under a minute, so its files share one load of the modules; `slow` holds calibration samples and fuzzing. Tests stand
 * beside what they test.
 */
export default defineConfig({
  test: {
    projects: [
      {
        test: {
          name: 'unit',
          include: ['packages/*/src/**/*.test.ts', 'bench/src/**/*.test.ts', 'scripts/**/*.test.ts'],
          exclude: ['**/*.slow.test.ts', '**/node_modules/**'],
          testTimeout: 60_000,
          isolate: false,
          maxWorkers: 2,
        },
      },
      {
        test: {
          name: 'slow',
          include: [
            'packages/*/src/**/*.slow.test.ts',
            'packages/web/build/**/*.slow.test.ts',
            'bench/src/**/*.slow.test.ts',
          ],
          testTimeout: 240_000,
          maxWorkers: 2,
        },
      },
    ],
  },
});
