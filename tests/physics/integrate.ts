import { createRequire } from 'node:module';

/** Solves y' = f(x, y) with the ODEX method of Hairer and Wanner, to twelve digits. */
export function integrate(f: (x: number, y: number[]) => number[], from: number, start: readonly number[], to: number): number[] {
  if (to <= from) return [...start];
  const solver = new Solver(start.length);
  solver.absoluteTolerance = solver.relativeTolerance = 1e-12;
  solver.initialStepSize = Math.min(1e-3, to - from);
  return solver.solve(f, from, [...start], to).y;
}

// The package ships its TypeScript source, which does not compile under this project's strictness.
const { Solver } = createRequire(import.meta.url)('odex') as {
  Solver: new (size: number) => {
    absoluteTolerance: number;
    relativeTolerance: number;
    initialStepSize: number;
    solve(f: (x: number, y: number[]) => number[], from: number, start: number[], to: number): { y: number[] };
  };
};
