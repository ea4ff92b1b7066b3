import { waterByMoisture } from "../batch/waterByMoisture.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { fixed } from "./cell.js";
import { noMix } from "./noMix.js";
import type { ReportBlock } from "./reportBlock.js";
import { siteCautions } from "./siteCautions.js";
import { type SiteMix, siteMix } from "./siteMix.js";
import type { SiteOptions, SiteSheet } from "./siteSheet.js";
import { liquid } from "./siteUnits.js";

/** Points of moisture below and above the planned heap that the table covers. */
const STEPS = [-2, -1, 0, 1, 2];

/**
 * One page to check the moisture of the mix by hand before each lift, and to correct the water.
 *
 * The ball test here is the one for the moisture of a mix. The test of the same name that drops a plastic
 * ball from two metres to judge binding is another one, and is not meant.
 *
 * @throws RangeError for options out of range. Source: steps and drop height of the ball test with the
 * field test `ball-and-drop`; the drying test is common practice, no source.
 */
export function siteMoistureCard(result: StudyResult, options: SiteOptions = {}): SiteSheet {
  const site = siteMix(result, options);
  const blocks: ReportBlock[] = site ? cardBlocks(result, site) : [noMix()];
  return { name: "moisture-check", title: say`Moisture check`, blocks };
}

function cardBlocks(
  { config }: StudyResult,
  { batch, water: { window, basis, fromTest } }: SiteMix,
): ReportBlock[] {
  const heapPct = (100 * batch.water.inMaterialsKg) / batch.dryMassKg;
  const heaps = STEPS.map((step) => heapPct + step).filter((pct) => pct >= 0);
  const range = say`${fixed(window.moisturePct.low, 1)} to ${fixed(window.moisturePct.high, 1)} %`;
  return [
    {
      kind: "table",
      caption: say`The mix, as rammed, percent of its dry mass`,
      columns: [
        { header: say`Not below`, align: "right" },
        { header: say`Best`, align: "right" },
        { header: say`Not above`, align: "right" },
      ],
      rows: [
        [
          `${fixed(window.moisturePct.low, 1)} %`,
          `${fixed(window.targetMoisturePct, 1)} %`,
          `${fixed(window.moisturePct.high, 1)} %`,
        ],
      ],
      notes: [
        fromTest
          ? say`Where the compaction test keeps ${fromTest.relativePct} % of its greatest dry density${fromTest.openDry || fromTest.openWet ? say`; the test ends there, so the window may be wider` : ""}. Another rammer has another window.`
          : basis === "entered"
            ? say`A tolerance that was entered, not a measured window.`
            : say`The compaction test gives no window; one point to each side is common practice without a source.`,
      ],
    },
    {
      kind: "table",
      caption: say`Ball and drop, before each lift`,
      columns: [{ header: "" }, { header: "" }],
      rows: [
        [say`Squeeze`, say`A handful, hard. Water on the hand: too wet.`],
        [say`Drop`, say`From shoulder height onto a hard, clean floor.`],
        [say`A few pieces`, say`Right: ram.`],
        [say`One lump, flattened`, say`Too wet: spread it, turn it, wait, test again.`],
        [say`Crumbs, or no ball`, say`Too dry: a little water by rose, mix, test again.`],
      ],
      notes: [
        say`No water on squeezing, and just breaking up from shoulder height: Intermediate Technology Development Group, Technical Advice Note 2 (read). What the other shapes mean is common practice without a source; other texts drop from 1.5 m (from memory). To know the moisture, dry a sample.`,
      ],
    },
    {
      kind: "table",
      caption: say`Dry a sample: moisture = 100 × (damp − dry) ÷ (dry − pan)`,
      columns: [
        { header: say`Date, batch` },
        { header: say`Pan, g` },
        { header: say`Pan + damp, g` },
        { header: say`Pan + dry, g` },
        { header: say`Moisture, %` },
      ],
      rows: Array.from({ length: 3 }, () => ["", "", "", "", ""]),
    },
    {
      kind: "table",
      caption: say`Water for a batch, to reach ${fixed(window.targetMoisturePct, 1)} % (window ${range})`,
      columns: [
        { header: say`Heaps hold` },
        ...heaps.map((pct) => ({ header: `${fixed(pct, 1)} %`, align: "right" as const })),
      ],
      rows: [
        [
          say`Pour in`,
          ...waterByMoisture(batch, heaps).map(({ toAddKg, surplusKg }) =>
            surplusKg > 0 ? say`dry it` : liquid(toAddKg, config.units),
          ),
        ],
      ],
      notes: [
        say`Heaps: soil, sand and gravel together, by dry mass; planned for ${fixed(heapPct, 1)} %. Damper sand also fills a bucket with less.`,
      ],
    },
    siteCautions(["cement-burns"]),
  ];
}
