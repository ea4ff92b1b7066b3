import type { ReportBlock } from "../../blocks/block.js";
import type { StudyResult } from "../../study/studyResult.js";
import { say } from "../../words/message.js";
import { fixed, numberColumn, plain } from "../cell.js";
import { warning } from "../tableOf.js";
import { noMix } from "../trials.js";
import { trialMass } from "./crewCards.js";
import { blankLines, pairsTable, type SiteSheet, siteCautions } from "./siteSheet.js";

/** Stands on each page of a trial. */
const TEST_BLOCKS_ONLY: ReportBlock = warning(
  say`For test blocks only. Nothing of this batch goes into a wall: this blend was not tested.`,
);

/**
 * The batches to make compaction points and test blocks of a proposed blend, one a cement content, by scale.
 * The water is what the compaction test finds; the card gives none.
 *
 * @returns one warning where the blend is not a proposed one. Source: `proposal`.
 */
export function trialCard(result: StudyResult): SiteSheet {
  const { proposal } = result;
  const title = say`Trial batch`;
  if (!proposal) return { name: "trial-card", title, blocks: [noMix()] };
  const { units } = result.config;
  const { batches } = proposal;
  const blocks: ReportBlock[] = [
    TEST_BLOCKS_ONLY,
    {
      kind: "table",
      caption: say`One batch a cement content, on a scale, moist mass`,
      columns: [
        { header: say`Put in` },
        numberColumn(say`Share`, "%"),
        ...batches.map(({ cementPct }) => numberColumn(say`${plain(cementPct)} % cement`)),
      ],
      rows: [
        ...proposal.shares.map(({ name, sharePct }, index) => [
          name,
          fixed(sharePct, 1),
          ...batches.map(({ materials }) => {
            const { moistMassKg, dryMassKg } = materials[index];
            return moistMassKg === undefined
              ? say`${trialMass(dryMassKg, units)} dry`
              : trialMass(moistMassKg, units);
          }),
        ]),
        [
          result.config.cement?.name ?? say`Cement`,
          "",
          ...batches.map(({ cementKg }) => trialMass(cementKg, units)),
        ],
        [
          say`Dry soil and aggregate`,
          "",
          ...batches.map(({ dryMassKg }) => trialMass(dryMassKg, units)),
        ],
      ],
      notes: [
        proposal.sizeBasis,
        proposal.cementBasis,
        say`Water: the compaction test finds how much. Until then add it bit by bit and begin with the ball test; weigh what you add and write it down.`,
        batches[0].waterInMaterialsKg === undefined
          ? say`The study does not give the moisture of each material: dry a sample of it, and weigh out as much more as the water it holds.`
          : say`The damp materials bring water: ${trialMass(batches[0].waterInMaterialsKg, units)} in the first batch, at the moistures of the study. Dry a sample of each.`,
      ],
    },
    pairsTable(say`To be found before this blend may be built with`, [
      [say`Compaction`, say`five points about the top, of this blend`],
      [
        say`Blocks`,
        say`of each cement content, cured as the wall will be; crushed dry, moist or soaked as the requirement says`,
      ],
      [say`Then`, say`write shares, curing, shape and how they were crushed into the study`],
    ]),
    siteCautions(["cement-burns", "silica-dust"]),
  ];
  return { name: "trial-card", title, blocks };
}

/** Blocks that a page has room for. */
const LINES = 12;

/** A page to write down what is seen on the blocks of a trial. The program judges none of it. */
export function trialLooksCard(_result: StudyResult): SiteSheet {
  const lines = blankLines(
    say`What is seen, in your own words`,
    [
      say`Block`,
      say`Texture`,
      say`Edges`,
      say`Cracks`,
      say`Colour, dry`,
      say`Photo`,
      say`Who`,
      say`Date`,
    ],
    Array.from({ length: LINES }, () => ""),
    [
      say`Colour when the mass stands still between two weighings a day apart: damp earth looks darker. Photographs side by side in one light, with a grey card.`,
    ],
  );
  const blocks = [TEST_BLOCKS_ONLY, lines];
  return { name: "trial-blocks", title: say`Trial blocks by eye`, blocks };
}
