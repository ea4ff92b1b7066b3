import { say } from "../words/message.js";
import { group, list, optional, required } from "./groups.js";
import { date, type Kind, number, oneOf, text } from "./kinds.js";
import type { ClauseConfig, DecisionConfig, ReportConfig, SamplingConfig } from "./studyConfig.js";

const accent: Kind<string> = {
  ...text("#1f5f8b"),
  whenEmpty: say`A colour stands in quotes, for example '#1f5f8b': without them the # begins a comment.`,
};

/** Annexes of the technical appendix, in the order in which they stand. */
export const ANNEX_KEYS = [
  "calculations",
  "findings",
  "analyses",
  "readings",
  "regression",
  "trials",
  "inputs",
  "guidance",
  "resampling",
  "models",
  "alternatives",
  "quantities",
  "cost",
  "code",
] as const;

/** What a study's `report.annexes` and the command line name an annex by. */
export type AnnexKey = (typeof ANNEX_KEYS)[number];

/** What a permit holds where nobody says otherwise: enough to check each number of the first page by hand. */
export const USUAL_ANNEXES: readonly AnnexKey[] = [
  "calculations",
  "findings",
  "analyses",
  "readings",
  "regression",
  "trials",
  "inputs",
];

/**
 * The annexes that a report is to have: those that were asked for, else those of the study, else the usual
 * ones of a permit.
 *
 * @param asked keys with commas between them, `all` or `none`; empty for what the study says.
 * @throws RangeError for a key that no annex has
 *
 * @example
 * annexKeys({}, "readings, code") // => ["readings", "code"]
 * annexKeys({ report: { annexes: ["cost"] } }, "") // => ["cost"]
 */
export function annexKeys(
  { report }: { readonly report?: ReportConfig } = {},
  asked = "",
): readonly AnnexKey[] {
  const words = asked.split(",").map((word) => word.trim());
  if (words.every((word) => word === "")) return report?.annexes ?? USUAL_ANNEXES;
  if (words.length === 1 && words[0] === "none") return [];
  if (words.length === 1 && words[0] === "all") return ANNEX_KEYS;
  const unknown = words.find((word) => !(ANNEX_KEYS as readonly string[]).includes(word));
  if (unknown !== undefined) {
    throw new RangeError(
      `invalid \`annexes\`: ${unknown}; expected all, none or some of ${ANNEX_KEYS.join(", ")}`,
    );
  }
  return ANNEX_KEYS.filter((key) => words.includes(key));
}

/** `report`: how the reports look. Every key may be left out; files lie inside the study folder. */
export const report: Kind<ReportConfig> = group(
  {
    template: optional(
      "template",
      oneOf("permit", "handout"),
      "Form of the report; left out, permit.",
    ),
    annexes: optional(
      "annexes",
      list(oneOf(...ANNEX_KEYS)),
      `Annexes of the technical appendix; left out, ${USUAL_ANNEXES.join(", ")}.`,
    ),
    logo: optional("logo", text("logo.svg"), "SVG or PNG picture for the title block."),
    "logo-text": optional(
      "logoText",
      text("Logo of the earth builders"),
      "What a reader who cannot see the logo is told; left out, “Logo”.",
    ),
    accent: optional(
      "accent",
      accent,
      "Colour of headings and rules, as CSS writes colours, in quotes.",
    ),
    header: optional(
      "header",
      text("Reading room, permit application"),
      "Text of the running head, in place of the title.",
    ),
    footer: optional(
      "footer",
      text("Earth builders, Example Town"),
      "Text of the running foot, in place of what made the report.",
    ),
    css: optional("css", text("own.css"), "Style sheet that stands behind ours in the HTML file."),
    typst: optional(
      "typst",
      text("own.typ"),
      "Typst file whose names stand in place of ours in the PDF.",
    ),
    fonts: optional(
      "fonts",
      text("fonts"),
      "Folder of TTF and OTF fonts for scripts that ours do not have.",
    ),
  },
  { name: "ReportConfig" },
);

/** `checklist`: the clauses that a reviewer will look for. */
export const checklist: Kind<readonly ClauseConfig[]> = list(
  group(
    {
      clause: required("clause", text("Code of practice, clause 4.1"), "As the code numbers it."),
      requirement: required(
        "requirement",
        text("The mix is stated with its tolerances."),
        "What it asks for.",
      ),
      "answered-by": optional(
        "answeredBy",
        text("tolerances"),
        "Key of the section of the report that answers it; left out while the clause is open.",
      ),
      remark: optional("remark", text("Editions are to be named."), "Your remark."),
    },
    { name: "ClauseConfig" },
  ),
);

/** `decisions`: what was decided on the way, and why. */
export const decisions: Kind<readonly DecisionConfig[]> = list(
  group(
    {
      date: required("date", date("2026-05-04"), "Date of the decision."),
      what: required("what", text("Test four cement contents"), "What was decided."),
      why: required("why", text("Two do not show whether the curve is straight."), "Why."),
      "instead-of": optional("insteadOf", text("two contents"), "What was the other choice."),
    },
    { name: "DecisionConfig" },
  ),
);

/** `sampling`: how samples were taken, one statement or more a material, printed as it stands. */
export const sampling: Kind<readonly SamplingConfig[]> = list(
  group(
    {
      material: required("material", text("site-soil"), "Id of the material."),
      where: required("where", text("two pits, east and west"), "Where it was taken."),
      how: required("how", text("from 0.4 to 1.2 m, mixed and quartered"), "How it was taken."),
      pits: optional(
        "pits",
        number({ whole: true, min: 1, max: 10_000, example: 2 }),
        "Pits, boreholes or heaps that the sample was put together from.",
      ),
      date: optional("date", date("2026-04-13"), "Date of sampling."),
    },
    { name: "SamplingConfig" },
  ),
);
