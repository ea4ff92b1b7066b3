import type { NoteBlock, TableBlock } from "../blocks/block.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { displayUnit } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import type { StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { BLANK, ends, fixed, numberColumn, plain, priceText, quantity } from "./cell.js";
import { note, present } from "./tableOf.js";
import { noMix } from "./trials.js";

function writtenPrices({ materials, cement }: StudyConfig, id: string): Text {
  const owner = id === "cement" ? cement : materials.find((material) => material.id === id);
  const { price, haul, lossPct } = owner ?? {};
  const words = [
    price ? priceText(price.written) : BLANK,
    ...(haul ? [say`haulage ${priceText(haul.written)}`] : []),
    ...(lossPct ? [say`${plain(lossPct)} % lost`] : []),
  ];
  return joinTexts(words);
}

/** What the materials cost, or that no price was entered. */
export function costTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { cost } = mix;
  if (!cost) return note(say`No prices were entered.`);
  const range = (value: Interval | null) => ends(value, (amount) => fixed(amount, 0));
  const hauled = cost.lines.some(({ haul }) => haul !== null);
  const sumOf = (part: "material" | "haul"): Interval => ({
    low: cost.lines.reduce((sum, line) => sum + (line[part]?.low ?? 0), 0),
    high: cost.lines.reduce((sum, line) => sum + (line[part]?.high ?? 0), 0),
  });
  const haulage = (haul: Interval | null) => (hauled ? [range(haul)] : []);
  return {
    kind: "table",
    caption: say`Cost of the materials for the element`,
    columns: present([
      { header: say`Material` },
      { header: say`Price, as entered` },
      numberColumn(hauled ? say`Purchase` : say`Cost`, config.currency),
      hauled && numberColumn(say`Haulage`, config.currency),
    ]),
    rows: [
      ...cost.lines.map(({ id, name, material, haul }) => [
        name,
        writtenPrices(config, id),
        range(material),
        ...haulage(haul),
      ]),
      ...(hauled
        ? [
            [say`Total`, "", range(sumOf("material")), range(sumOf("haul"))],
            [say`Purchase and haulage`, "", "", range(cost.total)],
          ]
        : [[say`Total`, "", range(cost.total)]]),
    ],
    notes: present([
      cost.status !== "ok" && cost.message,
      cost.total.low !== cost.total.high &&
        say`Low adds all low prices, high all high ones: the range if all prices err the same way.`,
      hauled
        ? say`Materials and haulage as entered; labour, forms and tools are not in it.`
        : say`Materials only; labour, transport, forms and tools are not in it.`,
    ]),
  };
}

/** What the chosen mix saves in cement, money and carbon against the other mix that the study names. */
export function compareMixTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { compared } = mix;
  if (!compared) {
    return note(say`No other mix was entered to compare with.`);
  }
  const { units, currency = "" } = config;
  const massUnit = displayUnit("mass", units);
  const mass = (kilograms: number) => quantity(1000 * kilograms, "mass", units, 4);
  const whole = (amount: number) => fixed(amount, 0);
  const [here, there] = [mix.quantities, compared.quantities];
  const bags = ({ cementBags }: typeof here) => ends(cementBags, whole);
  const bought = ({ mix: made }: typeof here) =>
    made.materials.reduce(
      (sum, { id, moistMassKg }) =>
        config.materials.find((material) => material.id === id)?.role === "soil"
          ? sum
          : sum + moistMassKg,
      0,
    );
  const other = joinTexts(
    config.materials.flatMap(({ id, name }) => {
      const share = config.compareMix?.sharesPct[id];
      return share ? [say`${name} ${fixed(share, 1)} %`] : [];
    }),
  );
  return {
    kind: "table",
    caption: say`What the mix saves against: ${compared.name}`,
    columns: [
      { header: say`For the element` },
      numberColumn(say`This mix`),
      numberColumn(say`Other mix`),
      numberColumn(say`Saved`),
    ],
    rows: present([
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
      mix.cost &&
        compared.cost && [
          currency === "" ? say`Cost` : say`Cost, ${currency}`,
          ends(mix.cost.total, whole),
          ends(compared.cost.total, whole),
          ends(compared.saving?.saved, whole),
        ],
      [
        say`Carbon, ${massUnit} CO₂e`,
        ends(mix.carbon.total, mass),
        ends(compared.carbon.total, mass),
        ends(compared.savedCarbonKg, mass),
      ],
    ]),
    notes: present([
      say`Other mix: ${other}; ${compared.basis}`,
      say`This comparison says nothing of the other mix's strength: whether it meets the requirement is for blocks of it to show.`,
      say`Both mixes are taken at the same prices and factors, so the saving is not the difference of two ranges. Below zero: this mix takes more.`,
      compared.saving?.message,
    ]),
  };
}
