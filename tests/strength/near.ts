import { expect } from "vitest";

/** Fails unless `found` is within the named tolerance of `wanted`. */
export function near(
  found: number | null | undefined,
  wanted: number,
  within: { readonly rel: number; readonly abs: number },
  of: string,
): void {
  const allowed = within.abs + within.rel * Math.abs(wanted);
  expect(
    Math.abs((found ?? Number.NaN) - wanted) <= allowed,
    `${of}: found ${found}, wanted ${wanted} within ${allowed}`,
  ).toBe(true);
}
