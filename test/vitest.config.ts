import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  // Vite turns the JSX of the calculators' views into Preact's calls, as Astro does for the site.
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: {
    root: fileURLToPath(new URL('..', import.meta.url)),
    include: ['test/**/*.test.ts', 'test/**/*.test.tsx'],
    environment: 'node',
    // No test is about time: a busy machine must not fail one.
    testTimeout: 60_000,
  },
});
