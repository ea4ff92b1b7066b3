import { describe, expect, it } from "vitest";

/** A name in the message, a call with a value, what it takes, and what it refuses: both sides of each limit. */
export type ArgumentLimit = readonly [
  string,
  (value: number) => unknown,
  readonly number[],
  readonly number[],
];

/** Asserts that each argument is taken up to its limits, and refused beyond with its name and value. */
export function holdArguments(limits: readonly ArgumentLimit[]): void {
  describe("an argument", () => {
    it.each(limits)(
      "%s is taken up to its limits and refused by name beyond",
      (name, call, taken, refused) => {
        for (const value of taken) expect(() => call(value), `${value}`).not.toThrow();
        for (const value of refused) {
          expect(() => call(value), `${value}`).toThrow(`invalid \`${name}\`: ${value}`);
        }
      },
    );
  });
}
