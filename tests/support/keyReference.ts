import type { Kind, Rows } from "../../src/entries/kinds.js";
import { STUDY } from "../../src/entries/study.js";
import { render } from "../../src/words/render.js";

const HEAD = `# Keys of study.yaml

Made from the table of keys in \`src/entries/\` by \`npm run schema\`: a change here is lost. \`loambook schema study\` gives
the same as JSON Schema, for an editor.

A key without a default must be there, unless it is marked “may be left out”. Numbers with a unit may be written in any
of the units named.
`;

/** The reference of all keys, in Markdown. */
export function keyReference(): string {
  return `${HEAD}\n${sections(STUDY, "")}`;
}

/** A table for a group, then one for each group below it. */
function sections(kind: Kind<unknown>, path: string, form = ""): string {
  const { parts } = kind;
  if (parts === undefined) return "";
  if (parts.kind === "list") return sections(parts.item, `${path}[]`);
  if (parts.kind === "names") return sections(parts.item, `${path}.<name>`);
  if (parts.kind === "forms") {
    // How a sheet is read is told once.
    if ("mapped" in parts.forms && !path.endsWith("compaction")) return "";
    return Object.entries(parts.forms)
      .map(([name, one]) => sections(one, path, ` (${name})`))
      .join("");
  }
  const title = path === "" ? "The study" : `\`${path}\`${form}`;
  const below = Object.entries(parts.rows).map(([key, row]) =>
    sections(row.kind, path === "" ? key : `${path}.${key}`),
  );
  return `## ${title}\n\n${table(parts.rows)}\n${below.join("")}`;
}

function table(rows: Rows): string {
  const lines = Object.entries(rows).map(([key, row]) => {
    const { kind, need, says, byDefault } = row;
    const bounds = kind.bounds === undefined ? "" : `, ${render(kind.bounds)}`;
    const cells = [
      `\`${key}\``,
      says,
      `${render(kind.form)}${bounds}`,
      kind.examples.map((example) => `\`${example}\``).join(", "),
      defaultWords(byDefault, need === "required"),
    ];
    return `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |\n`;
  });
  return `| key | what it is | written as | example | default |\n| --- | --- | --- | --- | --- |\n${lines.join("")}`;
}

function defaultWords(byDefault: unknown, isNeeded: boolean): string {
  if (isNeeded) return "";
  if (byDefault === undefined || typeof byDefault === "object") return "may be left out";
  return `\`${byDefault}\``;
}
