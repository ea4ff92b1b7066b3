import { shortSource } from "../guidance/entry.js";
import { GUIDANCE_ENTRIES } from "../guidance/published/recommendations.js";
import { say, type Text } from "../words/message.js";

/** One entry of `study.yaml` in a form. */
export interface EntryField {
  /** Where `study.yaml` has it. */
  readonly path: readonly string[];
  readonly label: Text;
  /** How it is written, with its unit. */
  readonly example: string;
  /** Its values, where there are only a few. */
  readonly choices?: readonly (readonly [string, Text])[];
}

/** Entries that belong together and are entered at once. */
export interface EntryForm {
  readonly id: string;
  readonly title: Text;
  readonly fields: readonly EntryField[];
}

const CRUSHED: EntryField["choices"] = [
  ["dry", say`dry`],
  ["moist", say`moist`],
  ["soaked", say`soaked`],
];

const requirement = (key: string) => ["strength", "requirement", key];

/** What a study needs beside its sheets before it gives a mix, in the order in which it is mostly known. */
export const ENTRY_FORMS: readonly EntryForm[] = [
  {
    id: "entry-guidance",
    title: say`Recommendation to compare with`,
    fields: [
      {
        path: ["guidance"],
        label: say`Recommendation`,
        example: "",
        choices: GUIDANCE_ENTRIES.map(
          (entry) => [entry.id, say`${shortSource(entry)}: ${entry.title}`] as const,
        ),
      },
    ],
  },
  {
    id: "entry-requirement",
    title: say`Required strength`,
    fields: [
      { path: requirement("strength"), label: say`Strength`, example: "1.5 MPa" },
      { path: requirement("age"), label: say`Age`, example: "28 d" },
      {
        path: requirement("statistic"),
        label: say`Which bound must reach it`,
        example: "",
        choices: [
          ["mean", say`of the mean strength`],
          ["prediction", say`of one further block`],
          ["tolerance", say`that 95 % of blocks exceed`],
        ],
      },
      { path: requirement("confidence"), label: say`Confidence`, example: "95 %" },
      {
        path: requirement("crushed"),
        label: say`State of the blocks when crushed`,
        example: "",
        choices: CRUSHED,
      },
      { path: requirement("basis"), label: say`Who requires it, and where`, example: "" },
    ],
  },
  {
    id: "entry-tested",
    title: say`Blend that was compacted and crushed`,
    fields: [
      {
        path: ["tested", "crushed"],
        label: say`State of the blocks when crushed`,
        example: "",
        choices: CRUSHED,
      },
      { path: ["tested", "curing"], label: say`Curing`, example: "" },
      {
        path: ["tested", "shape"],
        label: say`Shape of the blocks`,
        example: "",
        choices: [
          ["cube", say`cube`],
          ["prism", say`prism`],
          ["cylinder", say`cylinder`],
        ],
      },
    ],
  },
  {
    id: "entry-cement",
    title: say`Cement and batch`,
    fields: [
      { path: ["cement", "name"], label: say`Name of the cement`, example: "" },
      {
        path: ["cement", "loose-bulk-density"],
        label: say`Loose bulk density`,
        example: "1200 kg/m3",
      },
      { path: ["cement", "bag"], label: say`Mass of a bag`, example: "25 kg" },
      { path: ["cement", "price"], label: say`Price`, example: "4.60 to 5.20 per bag" },
      {
        path: ["batch", "dry-mass"],
        label: say`Dry soil and aggregate of a batch`,
        example: "120 kg",
      },
      { path: ["site", "bucket"], label: say`Bucket, struck level`, example: "10 L" },
    ],
  },
  {
    id: "entry-wall",
    title: say`Wall to be built`,
    fields: [
      { path: ["element", "name"], label: say`Name of the wall`, example: "" },
      { path: ["element", "length"], label: say`Length`, example: "6.4 m" },
      { path: ["element", "height"], label: say`Height`, example: "2.7 m" },
      { path: ["element", "thickness"], label: say`Thickness`, example: "400 mm" },
      {
        path: ["element", "compacted-lift"],
        label: say`Depth of a lift after ramming`,
        example: "100 mm",
      },
      { path: ["element", "waste"], label: say`Waste`, example: "5 %" },
    ],
  },
];
