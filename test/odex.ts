import { createRequire } from 'node:module';

/** What the tests use of odex. Its own source would not pass our compiler, so that it is required without its types. */
interface Odex {
  Solver: new (
    variables: number,
  ) => {
    relativeTolerance: number;
    absoluteTolerance: number;
    initialStepSize: number;
    maxSteps: number;
    solve(
      derivative: (x: number, y: number[]) => number[],
      from: number,
      start: readonly number[],
      to: number,
      /** after each step; false ends it */
      output?: (step: number, before: number, x: number, y: number[]) => boolean | undefined,
    ): { y: number[]; outcome: number; xEnd: number; nEval: number };
  };
}

export const { Solver } = createRequire(import.meta.url)('odex') as Odex;
