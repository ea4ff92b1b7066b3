import type { TableBlock } from "../blocks/block.js";
import type { WorkshopTrial } from "../lab/trials.js";
import type { TrialDifference } from "../strength/trials.js";
import { joinTexts, say } from "../words/message.js";
import { BLANK, fixed, numberColumn, plain } from "./cell.js";

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
