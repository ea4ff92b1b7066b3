const TAG = /^exercise(?:-([1-9]\d?))?$/;
const USUAL_LINES = 5;

/** Lines to write on below a cell, from its tags: 5 for `exercise`, 8 for `exercise-8`, 0 without. */
export function exerciseLines(tags: readonly string[]): number {
  const found = tags.map((tag) => TAG.exec(tag)).find((match) => match !== null);
  return found ? Number(found[1] ?? USUAL_LINES) : 0;
}
