import { say, sayOf } from "../words/say.js";

/** How a factor is known, in words. */
export function basisMark(basis: "read" | "memory" | "entered"): string {
  if (basis === "read") return say`read`;
  return basis === "memory" ? say`from memory` : say`as entered, not checked`;
}

/** A source with how it is known, once. */
export function markedSource(of: {
  readonly source: string;
  readonly basis: "read" | "memory" | "entered";
}): string {
  // Some sources say of one part that it is from memory: the mark would say it twice.
  return of.basis === "memory" && of.source.includes("from memory")
    ? sayOf(of.source)
    : say`${sayOf(of.source)}; ${basisMark(of.basis)}`;
}
