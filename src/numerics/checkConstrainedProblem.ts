import { checkVector } from "./checkVector.js";
import type { ConstrainedProblem } from "./constrainedFit.js";

/** Refuses a problem whose parts do not fit together; returns the number of unknowns. */
export function checkConstrainedProblem(problem: ConstrainedProblem): number {
  const rows = problem.matrix.length;
  const unknowns = problem.matrix[0]?.length ?? 0;
  if (rows === 0 || unknowns === 0) {
    throw new RangeError(
      `invalid \`matrix\`: ${rows} rows by ${unknowns} columns; expected at least one of each`,
    );
  }
  checkMatrix("matrix", problem.matrix, unknowns);
  checkVector("target", problem.target, rows);
  if (problem.weights) checkVector("weights", problem.weights, rows, 0);
  if (problem.equalities) {
    checkMatrix("equalities.matrix", problem.equalities.matrix, unknowns);
    checkVector("equalities.target", problem.equalities.target, problem.equalities.matrix.length);
  }
  if (problem.inequalities) {
    checkMatrix("inequalities.matrix", problem.inequalities.matrix, unknowns);
    checkVector(
      "inequalities.limit",
      problem.inequalities.limit,
      problem.inequalities.matrix.length,
    );
  }
  checkBounds("lower", problem.lower, unknowns, Infinity);
  checkBounds("upper", problem.upper, unknowns, -Infinity);
  return unknowns;
}

function checkMatrix(name: string, matrix: readonly (readonly number[])[], columns: number): void {
  matrix.forEach((row, i) => {
    checkVector(`${name}[${i}]`, row, columns);
  });
}

function checkBounds(
  name: string,
  values: readonly number[] | undefined,
  length: number,
  refused: number,
): void {
  if (!values) return;
  if (values.length !== length) {
    throw new TypeError(`invalid \`${name}\`: ${values.length} values; expected ${length}`);
  }
  values.forEach((value, j) => {
    if (Number.isNaN(value) || value === refused) {
      throw new RangeError(`invalid \`${name}[${j}]\`: ${value}; expected a number or ${-refused}`);
    }
  });
}
