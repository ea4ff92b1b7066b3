import { shortSource } from "../guidance/entry.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import { say, type Text } from "../words/message.js";

export interface EntryField {
  /** Where `study.yaml` has it. */
  readonly path: readonly string[];
  readonly label: Text;
  /** How it is written, with its unit. */
  readonly example: string;
  /** Its values, where there are only a few. */
  readonly choices?: readonly (readonly [string, Text])[];
}

export interface EntryForm {
  readonly id: string;
  readonly title: Text;
  readonly fields: readonly EntryField[];
}

/** An entry by its path with dots. */
function entry(
  path: string,
  label: Text,
  example = "",
  choices?: EntryField["choices"],
): EntryField {
  return { path: path.split("."), label, example, choices };
}

const CRUSHED: EntryField["choices"] = [
  ["dry", say`dry`],
  ["moist", say`moist`],
  ["soaked", say`soaked`],
];

const SHAPES: EntryField["choices"] = [
  ["cube", say`cube`],
  ["prism", say`prism`],
  ["cylinder", say`cylinder`],
];

const BOUNDS: EntryField["choices"] = [
  ["mean", say`of the mean strength`],
  ["prediction", say`of one further block`],
  ["tolerance", say`that 95 % of blocks exceed`],
];

const RECOMMENDATIONS = GUIDANCE_ENTRIES.map(
  (each) => [each.id, say`${shortSource(each)}: ${each.title}`] as const,
);

const requirement = "strength.requirement";

/** What a study needs beside its sheets before it gives a mix, in the order in which it is mostly known. */
export const ENTRY_FORMS: readonly EntryForm[] = [
  {
    id: "entry-guidance",
    title: say`Recommendation to compare with`,
    fields: [entry("guidance", say`Recommendation`, "", RECOMMENDATIONS)],
  },
  {
    id: "entry-requirement",
    title: say`Required strength`,
    fields: [
      entry(`${requirement}.strength`, say`Strength`, "1.5 MPa"),
      entry(`${requirement}.age`, say`Age`, "28 d"),
      entry(`${requirement}.statistic`, say`Which bound must reach it`, "", BOUNDS),
      entry(`${requirement}.confidence`, say`Confidence`, "95 %"),
      entry(`${requirement}.crushed`, say`State of the blocks when crushed`, "", CRUSHED),
      entry(`${requirement}.basis`, say`Who requires it, and where`),
    ],
  },
  {
    id: "entry-tested",
    title: say`Blend that was compacted and crushed`,
    fields: [
      entry("tested.crushed", say`State of the blocks when crushed`, "", CRUSHED),
      entry("tested.curing", say`Curing`),
      entry("tested.shape", say`Shape of the blocks`, "", SHAPES),
    ],
  },
  {
    id: "entry-cement",
    title: say`Cement and batch`,
    fields: [
      entry("cement.name", say`Name of the cement`),
      entry("cement.loose-bulk-density", say`Loose bulk density`, "1200 kg/m3"),
      entry("cement.bag", say`Mass of a bag`, "25 kg"),
      entry("cement.price", say`Price`, "4.60 to 5.20 per bag"),
      entry("batch.dry-mass", say`Dry soil and aggregate of a batch`, "120 kg"),
      entry("site.bucket", say`Bucket, struck level`, "10 L"),
    ],
  },
  {
    id: "entry-wall",
    title: say`Wall to be built`,
    fields: [
      entry("element.name", say`Name of the wall`),
      entry("element.length", say`Length`, "6.4 m"),
      entry("element.height", say`Height`, "2.7 m"),
      entry("element.thickness", say`Thickness`, "400 mm"),
      entry("element.compacted-lift", say`Depth of a lift after ramming`, "100 mm"),
      entry("element.waste", say`Waste`, "5 %"),
    ],
  },
];
