import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/bench/**'],
    benchmark: { include: ['tests/bench/**/*.bench.ts'] },
    globalSetup: ['tests/global-setup.ts'],
    testTimeout: 60_000,
    hookTimeout: 180_000,
    env: { TZ: 'Pacific/Kiritimati', LC_ALL: 'C' },
  },
});
