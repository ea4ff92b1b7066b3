import type { CostRange, MixSaving } from "../batch/cost.js";
import type { NoteBlock, TableBlock } from "../blocks/block.js";
import type { StudyConfig } from "../entries/studyConfig.js";
import { displayUnit } from "../quantities/format.js";
import type { Interval } from "../quantities/interval.js";
import type { StudyResult } from "../study/studyResult.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { BLANK, fixed, numberColumn, plain, quantity } from "./cell.js";
import { noMix } from "./noMix.js";

function writtenPrices({ materials, cement }: StudyConfig, id: string): Text {
  const owner = id === "cement" ? cement : materials.find((material) => material.id === id);
  const { price, haul, lossPct } = owner ?? {};
  const words = [
    price?.written ?? BLANK,
    ...(haul ? [say`haul ${haul.written}`] : []),
    ...(lossPct ? [say`${plain(lossPct)} % lost`] : []),
  ];
  return joinTexts(words);
}

/** What the materials cost, or that no price was entered. */
export function costTable({ config, mix }: StudyResult): TableBlock | NoteBlock {
  if (!mix) return noMix();
  const { cost } = mix;
  if (!cost) return { kind: "note", tone: "note", text: say`No prices were entered.` };
  const range = (value: Interval | null) => {
    if (value === null) return BLANK;
    const [low, high] = [fixed(value.low, 0), fixed(value.high, 0)];
    return low === high ? low : say`${low} to ${high}`;
  };
  const hauled = cost.lines.some(({ haul }) => haul !== null);
  const sumOf = (part: "material" | "haul"): Interval => ({
    low: cost.lines.reduce((sum, line) => sum + (line[part]?.low ?? 0), 0),
    high: cost.lines.reduce((sum, line) => sum + (line[part]?.high ?? 0), 0),
  });
  const bringing = (haul: Interval | null) => (hauled ? [range(haul)] : []);
  return {
    kind: "table",
    caption: say`Cost of the materials for the element`,
    columns: [
      { header: say`Material` },
      { header: say`Price, as entered` },
      numberColumn(hauled ? say`To buy` : say`Cost`, config.currency),
      ...(hauled ? [numberColumn(say`To bring`, config.currency)] : []),
    ],
    rows: [
      ...cost.lines.map(({ id, name, material, haul }) => [
        name,
        writtenPrices(config, id),
        range(material),
        ...bringing(haul),
      ]),
      ...(hauled
        ? [
            [say`Total`, "", range(sumOf("material")), range(sumOf("haul"))],
            [say`Bought and brought`, "", "", range(cost.total)],
          ]
        : [[say`Total`, "", range(cost.total)]]),
    ],
    notes: [
      ...(cost.status === "ok" ? [] : [cost.message]),
      ...(cost.total.low === cost.total.high
        ? []
        : [
            say`Low adds all low prices, high all high ones: the range if all prices err the same way.`,
          ]),
      hauled
        ? say`Materials and haul as entered; labour, forms and tools are not in it.`
        : say`Materials only; labour, transport, forms and tools are not in it.`,
    ],
  };
}

/**
 * Cost of a mix by material, low to high, and what it saves against another mix where that was worked out.
 *
 * @param options.currency stands over the columns. @param options.against names the other mix.
 *
 * @example
 * const materials = [{ id: "soil", name: "Soil", sharePct: 100, looseBulkDensityKgM3: 1250, moisturePct: 0 }];
 * const at = (cementPct) => recipe({ materials, cementPct, cementBulkDensityKgM3: 1200, targetMoisturePct: 10, batchDryMassKg: 1000 });
 * const prices = { soil: { price: { low: 0, high: 5, per: "t" } }, cement: { price: { low: 150, high: 200, per: "t" } } };
 * const table = siteCostTable(costRange(at(6), prices), { saving: mixSaving({ mix: at(6), other: at(8), prices }), against: "8 % cement" });
 * table.rows[2] // => ["Total", "9 to 17", ""]
 * table.notes[1] // => "Saved against 8 % cement: 3 to 4. This mix costs less at all prices given."
 */
export function siteCostTable(
  cost: CostRange,
  options: {
    readonly currency?: string;
    readonly saving?: MixSaving;
    readonly against?: Text;
  } = {},
): TableBlock {
  const { currency, saving, against = say`the other mix` } = options;
  const range = (value: Interval | null) =>
    value === null ? BLANK : say`${fixed(value.low, 0)} to ${fixed(value.high, 0)}`;
  return {
    kind: "table",
    caption: say`Cost of the materials, from low to high`,
    columns: [
      { header: say`Material` },
      numberColumn(say`To buy`, currency),
      numberColumn(say`To bring`, currency),
    ],
    rows: [
      ...cost.lines.map(({ name, material, haul }) => [name, range(material), range(haul)]),
      [say`Total`, range(cost.total), ""],
    ],
    notes: [
      cost.message,
      ...(saving
        ? [
            saving.saved === null
              ? say`No saving against ${against} is given: ${saving.message}`
              : say`Saved against ${against}: ${range(saving.saved)}. ${saving.message}`,
          ]
        : []),
    ],
  };
}

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
  const between = (value: Interval | null | undefined, write: (end: number) => Text) => {
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
  const other = joinTexts(
    config.materials.flatMap(({ id, name }) => {
      const share = config.compareBlend?.sharesPct[id];
      return share ? [say`${name} ${fixed(share, 1)} %`] : [];
    }),
  );
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
