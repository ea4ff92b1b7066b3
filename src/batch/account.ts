import type { Interval } from "../quantities/interval.js";

/** A line of an account: what one thing costs or emits, by its parts; null where a part is not known. */
export interface AccountLine {
  readonly id: string;
  readonly parts: readonly (Interval | null)[];
}

/** A range whose low and high end are found in the same way. */
export function bothEnds(at: (end: keyof Interval) => number): Interval {
  return { low: at("low"), high: at("high") };
}

/** All parts that are known, added up. */
export function accountTotal(lines: readonly AccountLine[]): Interval {
  const parts = lines.flatMap((line) => line.parts);
  return bothEnds((end) => parts.reduce((sum, part) => sum + (part?.[end] ?? 0), 0));
}

/**
 * What one account exceeds another by, where both are made at the same prices or factors.
 *
 * The ranges are not subtracted end from end: each line takes the same end in both accounts, so that
 * what both have alike adds no doubt. The low end takes for each line the end that gives less.
 */
export function accountDifference(
  here: readonly AccountLine[],
  there: readonly AccountLine[],
): Interval {
  const difference = { low: 0, high: 0 };
  for (const id of new Set([...here, ...there].map((line) => line.id))) {
    const [mine, other] = [here, there].map(
      (account) => account.find((line) => line.id === id)?.parts ?? [],
    );
    for (let part = 0; part < Math.max(mine.length, other.length); part++) {
      const ends = (["low", "high"] as const).map(
        (end) => (other[part]?.[end] ?? 0) - (mine[part]?.[end] ?? 0),
      );
      difference.low += Math.min(...ends);
      difference.high += Math.max(...ends);
    }
  }
  return difference;
}
