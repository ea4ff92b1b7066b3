import { formatQuantity } from "../quantities/displayUnits.js";
import { type SpecifiedLine, specifiedMix } from "../study/specifiedMix.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { fixed } from "./cell.js";
import { noQuality } from "./qualityPlanTable.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

/**
 * What is checked on site, how often, what is accepted, and what follows from a failure.
 *
 * How often and the trial wall are the study's entries where it has them; what is left out is marked. What
 * follows is common practice, no source: the responsible person decides.
 */
export function qualityChecksTable(
  result: Pick<StudyResult, "config" | "quality" | "mix" | "compaction" | "strength">,
): TableBlock | NoteBlock {
  const { config, quality } = result;
  const asked = config.quality;
  if (!quality || !asked) return noQuality();
  const lines = specifiedMix(result);
  const line = (kind: SpecifiedLine["kind"]) => lines.find((one) => one.kind === kind);
  const range = (kind: SpecifiedLine["kind"], decimals: number) => {
    const { low, high } = line(kind) ?? {};
    return low === undefined || high === undefined
      ? say`not stated`
      : say`${fixed(low, decimals)} to ${fixed(high, decimals)} %`;
  };
  const depth = (metres: number) => formatQuantity(1000 * metres, "depth", config.units);
  const lift = line("lift");
  const least = line("density")?.low;
  const usual = (words: string) => say`${words} (common practice, no source)`;
  return {
    kind: "table",
    caption: say`Checks on site`,
    columns: [
      { header: say`Check` },
      { header: say`How often` },
      { header: say`Accepted` },
      { header: say`If not` },
    ],
    rows: [
      [
        say`Trial wall`,
        asked.trialWall ?? say`not stated; the responsible person decides`,
        say`by the responsible person, before the work begins`,
        say`change the mix, the ramming or the crew's way, and make another`,
      ],
      [
        say`Soil and aggregate`,
        usual(say`each load by eye and feel; sieve when it changes`),
        say`as the sample of the study`,
        say`set the load aside; sieve it before it is used`,
      ],
      [
        say`Cement in a batch`,
        usual(say`each batch; bags against batches each day`),
        range("cement", 2),
        say`mark the lift, tell the responsible person`,
      ],
      [
        say`Moisture at ramming`,
        asked.moistureChecks ?? usual(say`ball and drop before each lift, a dried sample each day`),
        range("moisture", 1),
        say`correct the batch before it is rammed; throw away what stiffens`,
      ],
      [
        say`Depth of a rammed lift`,
        usual(say`each lift`),
        lift?.low === undefined || lift.high === undefined
          ? say`not stated`
          : say`${depth(lift.low)} to ${depth(lift.high)}`,
        say`spread less; ram on until it no longer gives`,
      ],
      [
        say`Dry density, rammed`,
        asked.densityChecks === undefined
          ? say`not stated; the responsible person decides`
          : say`${asked.densityChecks} a lot`,
        least === undefined
          ? say`not stated`
          : say`at least ${formatQuantity(least, "density", config.units, 4)}`,
        say`stop, check moisture and ramming, tell the responsible person`,
      ],
      [
        say`Strength of blocks`,
        quality.blocksALot === undefined ? say`each lot` : say`${quality.blocksALot} blocks a lot`,
        say`by the rule of the plan`,
        say`stop on that lot; the responsible person decides in writing`,
      ],
    ],
    notes: [
      say`A check that fails is written down with its place in the wall. What follows is for the responsible person to decide; the last column is common practice, no source.`,
    ],
  };
}
