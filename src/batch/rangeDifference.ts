import type { Interval } from "../quantities/interval.js";

/** A line of an account: what one thing costs or emits, by name of the part. */
interface AccountLine {
  readonly id: string;
  readonly parts: readonly (Interval | null)[];
}

/**
 * What one account exceeds another by, where both are made at the same prices or factors.
 *
 * The ranges are not subtracted end from end: each line takes the same end in both accounts, so that
 * what both have alike adds no doubt. The low end takes for each line the end that gives less.
 */
export function rangeDifference(
  here: readonly AccountLine[],
  there: readonly AccountLine[],
): Interval {
  const difference = { low: 0, high: 0 };
  for (const id of new Set([...here, ...there].map((line) => line.id))) {
    const [mine, other] = [here, there].map(
      (account) => account.find((line) => line.id === id)?.parts ?? [],
    );
    for (let part = 0; part < Math.max(mine.length, other.length); part++) {
      const atLow = (other[part]?.low ?? 0) - (mine[part]?.low ?? 0);
      const atHigh = (other[part]?.high ?? 0) - (mine[part]?.high ?? 0);
      difference.low += Math.min(atLow, atHigh);
      difference.high += Math.max(atLow, atHigh);
    }
  }
  return difference;
}
