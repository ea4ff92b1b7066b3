import { stringify } from "yaml";
import { INVENTED_MARKS, PLACEHOLDERS } from "../study/inventedData.js";
import { STUDY_FORMAT } from "../study/studySchema.js";
import type { NewAnswers } from "./newAnswers.js";
import type { PlacedMaterial } from "./newMaterials.js";
import { sheetsOf } from "./sheetsOf.js";
import type { StudyTemplate } from "./studyTemplate.js";

/** Name of the schema that is laid beside a new study, for editors. */
export const SCHEMA_FILE = "study.schema.json";

const line = (key: string, value: unknown) =>
  stringify({ [key]: value }, { lineWidth: 0 }).trimEnd();
const indented = (text: string, by: string) => text.replace(/^(?=.)/gm, by);

function materialLines({ id, name, role, model, sheets }: PlacedMaterial): string {
  const share = role === "soil" ? [line("share", { min: "30 %" })] : [];
  const lines = [
    ...[line("id", id), line("name", name), line("role", role)],
    ...sheets.map(({ test, to }) => `${line(test, to)}    # ${INVENTED_MARKS.sheet}`),
    ...(["particle-density", "loose-bulk-density", "moisture", "price"] as const)
      .filter((key) => model[key] !== undefined)
      .map((key) => `${line(key, model[key])}    # ${INVENTED_MARKS.entry}`),
    ...share,
  ].join("\n");
  return indented(lines, "    ").replace(/^ {4}/, "  - ");
}

/** The order in which invented sheets give way to one's own, each step resting on the one before. */
function order(materials: readonly PlacedMaterial[], compaction: string, blocks: string): string {
  const files = (soil: boolean) =>
    materials
      .filter(({ role }) => (role === "soil") === soil)
      .flatMap(({ sheets }) => sheets.map(({ to }) => `#      ${to}\n`))
      .join("");
  const bought = files(false);
  const steps = [
    `The soil, which decides whether the rest is worth while:\n${files(true)}`,
    ...(bought === "" ? [] : [`What can be had near it; then the blend is your own:\n${bought}`]),
    `Compaction of that blend, without cement; then water and density are your own:\n#      ${compaction}\n`,
    `Blocks of that blend with three cement contents or more (“loambook plan” says how many):\n#      ${blocks}\n`,
    "Then the entries below that are marked “invented”.\n",
  ];
  return steps.map((step, index) => `#   ${index + 1}. ${step}`).join("");
}

/** The text of `study.yaml` for a new study: what the user said, and an example's numbers marked as invented. */
export function newStudyYaml(
  answers: NewAnswers,
  materials: readonly PlacedMaterial[],
  { entries }: StudyTemplate,
): string {
  const { length, height, thickness } = answers;
  const [compaction, blocks] = [
    ...sheetsOf(entries.compaction),
    ...sheetsOf(entries.strength.sheet),
  ];
  const { requirement, form, "round-up-to": roundUp } = entries.strength;
  const cement = {
    ...{ name: PLACEHOLDERS.cement, "loose-bulk-density": entries.cement["loose-bulk-density"] },
    ...{ bag: entries.cement.bag, price: entries.cement.price },
  };
  const element = {
    ...{ name: "Wall", length, height, thickness },
    ...{ "compacted-lift": entries.element["compacted-lift"], waste: entries.element.waste },
  };
  return `# yaml-language-server: $schema=${SCHEMA_FILE}
# A study to start from. Every sheet, and every entry marked “invented”, is invented. Replace in this order:
${order(materials, compaction, blocks)}# When nothing invented is left, set “invented: false”. “loambook check” tells at any time what is wrong
# or doubtful, and what would be known better.
${line("format", STUDY_FORMAT)}
invented: true
${line("title", answers.title)}
${line("place", answers.place)}
${line("purpose", "Choose the blend and the least cement, for review by the responsible engineer.")}
${line("date", answers.date)}
${line("language", answers.language)}
${line("units", answers.units)}
${line("page", answers.page)}
${line("currency", answers.currency)}
${line("seed", entries.seed)}

materials:
${materials.map(materialLines).join("\n")}

# The designer's choice.
${line("target", entries.target)}
# limits:                       # conditions that the blend must keep, for example
#   fines: { max: 30 % }
${line("guidance", entries.guidance)}

${line("compaction", compaction)}    # ${INVENTED_MARKS.sheet}

# ${INVENTED_MARKS.cement}
${line("cement", cement)}

strength:
  ${line("sheet", blocks)}    # ${INVENTED_MARKS.sheet}
  ${line("form", form ?? "linear")}
  ${line("round-up-to", roundUp ?? "0.5 %")}
  requirement:
    ${line("strength", answers.strength)}
    ${line("age", requirement.age)}
    ${line("statistic", requirement.statistic)}
    ${line("confidence", requirement.confidence)}
    ${line("basis", PLACEHOLDERS.basis)}

${line("batch", entries.batch)}

${line("element", element)}
#  openings:
#    - { width: 1.2 m, height: 1.3 m, count: 2 }
`;
}
