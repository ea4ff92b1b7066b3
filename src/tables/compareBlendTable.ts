import type { Between } from "../batch/cementComparison.js";
import { displayUnit } from "../quantities/displayUnits.js";
import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { BLANK, fixed, quantity } from "./cell.js";
import { noMix } from "./noMix.js";
import type { NoteBlock, TableBlock } from "./reportBlock.js";

/** What the chosen mix saves in cement, money and carbon against the other mix that the study names. */
export function compareBlendTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { compared } = mix;
  if (!compared) {
    return { kind: "note", tone: "note", text: say`No other mix was entered to compare with.` };
  }
  const { units, currency = "" } = config;
  const massUnit = displayUnit("mass", units);
  const mass = (kilograms: number) => quantity(1000 * kilograms, "mass", units, 4);
  const between = (value: Between | null | undefined, write: (end: number) => string) => {
    if (!value) return BLANK;
    const [low, high] = [write(value.low), write(value.high)];
    return low === high ? low : say`${low} to ${high}`;
  };
  const whole = (amount: number) => fixed(amount, 0);
  const { quantities: here } = mix;
  const { quantities: there } = compared;
  const bags = ({ cementBags }: typeof here) => between(cementBags, whole);
  const bought = (of: typeof here) =>
    of.mix.materials.reduce(
      (sum, { id, moistMassKg }) =>
        config.materials.find((material) => material.id === id)?.role === "soil"
          ? sum
          : sum + moistMassKg,
      0,
    );
  const other = config.materials
    .flatMap(({ id, name }) => {
      const share = config.compareBlend?.sharesPct[id];
      return share ? [say`${name} ${fixed(share, 1)} %`] : [];
    })
    .join(", ");
  return {
    kind: "table",
    caption: say`What the mix saves against: ${compared.name}`,
    columns: [
      { header: say`For the element` },
      { header: say`This mix`, align: "right" },
      { header: say`Other mix`, align: "right" },
      { header: say`Saved`, align: "right" },
    ],
    rows: [
      [
        say`Cement, % of dry soil and aggregate`,
        fixed(here.mix.cementPct, 1),
        fixed(there.mix.cementPct, 1),
        fixed(there.mix.cementPct - here.mix.cementPct, 1),
      ],
      [
        say`Cement, ${massUnit}`,
        mass(here.mix.cement.dryMassKg),
        mass(there.mix.cement.dryMassKg),
        mass(compared.savedCementKg),
      ],
      [say`Cement, bags`, bags(here), bags(there), ""],
      [
        say`Sand and gravel, ${massUnit} as delivered`,
        mass(bought(here)),
        mass(bought(there)),
        mass(bought(there) - bought(here)),
      ],
      ...(mix.cost && compared.cost
        ? [
            [
              currency === "" ? say`Cost` : say`Cost, ${currency}`,
              between(mix.cost.total, whole),
              between(compared.cost.total, whole),
              between(compared.saving?.saved, whole),
            ],
          ]
        : []),
      [
        say`Carbon, ${massUnit} CO₂e`,
        between(mix.carbon.total, mass),
        between(compared.carbon.total, mass),
        between(compared.savedCarbonKg, mass),
      ],
    ],
    notes: [
      say`Other mix: ${other}; ${compared.basis}`,
      say`This comparison says nothing of the other mix's strength: whether it meets the requirement is for blocks of it to show.`,
      say`Both mixes are taken at the same prices and factors, so the saving is not the difference of two ranges. Below zero: this mix takes more.`,
      ...(compared.saving ? [compared.saving.message] : []),
    ],
  };
}
