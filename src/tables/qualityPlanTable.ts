import { formatQuantity } from "../quantities/displayUnits.js";
import type { LotConfig } from "../study/qualityConfig.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { plain } from "./cell.js";
import type { KeyValuesBlock, NoteBlock } from "./reportBlock.js";

/** What stands in the place of the plan where the study asks for none. */
export function noQuality(): NoteBlock {
  return {
    kind: "note",
    tone: "note",
    text: say`No quality-control plan was entered; the responsible person sets how the work is watched.`,
  };
}

/** The quality-control plan in numbers: lots, blocks, rule and risks. */
export function qualityPlanTable({
  config,
  quality,
}: Pick<StudyResult, "config" | "quality">): KeyValuesBlock | NoteBlock {
  const asked = config.quality;
  if (!quality || !asked) return noQuality();
  const { units } = config;
  const { lots, blocks, blocksALot, agesDays, rule, risks, densityChecks } = quality;
  const stress = (mpa: number) => formatQuantity(mpa, "stress", units);
  const ages = agesDays.map((age) => plain(age)).join(", ");
  const unknown = say`not known: enter how many batches are made a day`;
  return {
    kind: "keyValues",
    caption: say`Quality-control plan: ${config.element.name}`,
    items: [
      { label: say`A lot`, value: lotText(asked.lot, units) },
      { label: say`Lots of the element`, value: lots === undefined ? unknown : String(lots) },
      {
        label: say`Blocks of a lot`,
        value: rule
          ? say`${rule.blocks} at each age (${ages} days), ${asked.spareBlocks} kept spare: ${blocksALot}`
          : say`not known without a rule`,
      },
      { label: say`Blocks in all`, value: blocks === undefined ? unknown : String(blocks) },
      {
        label: say`Lots are judged at`,
        value: say`${config.strength.requirement.ageDays} days, the age of the requirement; younger blocks give early warning only`,
      },
      { label: say`Rule`, value: quality.ruleMessage },
      {
        label: say`Scatter that the risks hold for`,
        value:
          quality.scatterBasis === "entered"
            ? say`standard deviation ${stress(quality.scatterMpa)}, as entered`
            : say`standard deviation ${stress(quality.scatterMpa)}, that of the laboratory blocks about the curve; blocks made on site mostly scatter more (common practice, no source)`,
      },
      ...(risks ? [{ label: say`Risks`, value: risks.message }] : []),
      ...(asked.densityChecks === undefined
        ? []
        : [
            {
              label: say`Density checks`,
              value:
                densityChecks === undefined
                  ? say`${asked.densityChecks} a lot`
                  : say`${asked.densityChecks} a lot, ${densityChecks} in all`,
            },
          ]),
      { label: say`Basis (as entered)`, value: asked.basis },
    ],
  };
}

function lotText(lot: LotConfig, units: StudyResult["config"]["units"]): string {
  if (lot.kind === "volume") {
    return say`${formatQuantity(1e6 * lot.volumeM3, "volume", units)} rammed`;
  }
  return lot.batchesADay === undefined
    ? say`what is made in ${lot.days} working days`
    : say`what is made in ${lot.days} working days of ${plain(lot.batchesADay)} batches`;
}
