import type { GuidanceEntry } from "../guidance/guidanceEntry.js";
import { say } from "../words/say.js";
import type { ChartBand } from "./chartBand.js";

/** The band of a guidance entry for a grading chart, named with how far it can be trusted; nothing where it limits no passing. */
export function guidanceBand(entry: GuidanceEntry): ChartBand | undefined {
  if (entry.points.length === 0) return undefined;
  const first = entry.own ? entry.title : entry.source.authors.split(/[;,(]/)[0].trim();
  const mark = entry.own
    ? [say`the study's own`]
    : [
        entry.derived ? say`derived by us` : say`as published`,
        entry.basis === "read" ? say`read` : say`from memory`,
      ];
  return {
    name: `${[first, entry.source.year].join(" ").trim()} (${mark.join(", ")})`,
    pointsOnly: entry.derived,
    points: entry.points,
  };
}
