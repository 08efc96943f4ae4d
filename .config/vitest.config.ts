import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    root: new URL('..', import.meta.url).pathname,
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/workbench/**', 'node_modules/**'],
    pool: 'threads',
    // Packages are imported as Node itself imports them.
    deps: { interopDefault: false },
    testTimeout: 60_000,
  },
});
