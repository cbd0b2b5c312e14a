import type { Handle } from '../parts/useScenario.ts';

/** Reads a recorded ride and puts a climb of it into the calculator. */
export function Recording(_: { tool: Handle }) {
  return <section class="recording" />;
}
