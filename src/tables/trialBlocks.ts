import type { TableBlock } from "../blocks/block.js";
import type { WorkshopTrial } from "../lab/trials.js";
import type { TestProgramme } from "../strength/programme.js";
import type { TrialDifference } from "../strength/trials.js";
import { joinTexts, say } from "../words/message.js";
import { BLANK, fixed, numberColumn, plain } from "./cell.js";

/** The programme as a page to make and crush by; the cells that are empty are filled in by hand. */
export function programmeTable(programme: TestProgramme): TableBlock {
  return {
    kind: "table",
    caption: say`Making and crushing`,
    columns: [
      { header: say`Block` },
      { header: say`Batch` },
      { header: say`Cement`, unit: "%", align: "right" },
      { header: say`Crush at`, unit: "d", align: "right" },
      { header: say`Crushing order`, align: "right" },
      { header: say`Size`, unit: "mm" },
      { header: say`Mass`, unit: "g" },
      { header: say`Load`, unit: "kN" },
      { header: say`Remark` },
    ],
    rows: programme.blocks.map(({ id, batch, cementPct, ageDays, crushingOrder }) => [
      id,
      batch,
      plain(cementPct),
      plain(ageDays),
      String(crushingOrder),
      "",
      "",
      "",
      "",
    ]),
    notes: [
      programme.message,
      say`Rows stand in the order of making, drawn at random. A block that breaks stays on the sheet with its reason.`,
    ],
  };
}

/** The log of workshop trials. */
export function trialsTable(trials: readonly WorkshopTrial[]): TableBlock {
  return {
    kind: "table",
    caption: say`Workshop trials`,
    columns: [
      { header: say`Trial` },
      { header: say`Mix` },
      { header: say`Texture` },
      { header: say`Edges` },
      numberColumn(say`Thickness`, "mm"),
      { header: say`Munsell` },
      { header: "L* a* b*" },
      { header: say`Dry` },
    ],
    rows: trials.map(
      ({ id, mix, texture, edges, thicknessMm, munsell, lab, dryToConstantMass }) => [
        id,
        mix,
        texture ?? BLANK,
        edges ?? BLANK,
        plain(thicknessMm),
        munsell ?? BLANK,
        lab
          ? joinTexts(
              [lab.l, lab.a, lab.b].map((value) => plain(value, 3)),
              " ",
            )
          : BLANK,
        dryToConstantMass ? say`to constant mass` : say`not known`,
      ],
    ),
    notes: [
      say`Small thin samples dry in an hour or so; colour is judged when the mass stands still, strength on cured blocks.`,
    ],
  };
}

/** Colour differences between trials, largest first. */
export function trialDifferencesTable(differences: readonly TrialDifference[]): TableBlock {
  return {
    kind: "table",
    caption: say`Colour differences between trials`,
    columns: [
      { header: say`Trial` },
      { header: say`Trial` },
      numberColumn("CIEDE2000"),
      { header: say`In words` },
    ],
    rows: differences.map(({ one, other, deltaE, words }) => [one, other, fixed(deltaE, 1), words]),
    notes: [
      say`The words are common practice, no source; photographs must share light, camera setting and grey card.`,
    ],
  };
}
