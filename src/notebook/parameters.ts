import {
  joinText,
  type NotebookCell,
  type NotebookFile,
  splitText,
  tagsOf,
} from "./notebookFile.js";

export type ParameterValue = string | number | boolean;

/** Parameters that do not fit the notebook; the message names those that it has. */
export class ParameterError extends RangeError {
  override readonly name = "ParameterError";
}

const PARAMETERS_TAG = "parameters";
/** Tag of the cell that holds the parameters of a run. */
export const INJECTED_TAG = "injected-parameters";

const STRING = String.raw`"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'`;
const LITERAL = String.raw`${STRING}|[-+]?(?:\d[\d_]*\.?\d*|\.\d+)(?:[eE][-+]?\d+)?|true|false`;
const DECLARATION = new RegExp(
  String.raw`^(?:let|const|var)\s+([A-Za-z_$][\w$]*)\s*(?::\s*([^=]+?))?\s*=\s*(${LITERAL})\s*;?\s*(?://.*)?$`,
);

interface Declared {
  readonly name: string;
  readonly annotation: string | undefined;
  readonly type: "string" | "number" | "boolean";
}

/** Reads the declarations of a parameters cell: one literal a line, blank lines and comment lines apart. */
function declarations(cell: NotebookCell): Declared[] {
  const found: Declared[] = [];
  joinText(cell.source)
    .split("\n")
    .forEach((line, index) => {
      const text = line.trim();
      if (text === "" || text.startsWith("//")) return;
      const [, name, annotation, literal] = DECLARATION.exec(text) ?? [];
      if (name === undefined || literal === undefined) {
        throw new ParameterError(
          `invalid parameters cell, line ${index + 1}: ${text}; expected \`let name = literal;\``,
        );
      }
      found.push({ name, annotation, type: typeOf(literal) });
    });
  return found;
}

function typeOf(literal: string): Declared["type"] {
  if (/^["']/.test(literal)) return "string";
  return /^[tf]/.test(literal) ? "boolean" : "number";
}

function line(name: string, value: ParameterValue, declared: Declared | undefined): string {
  const refuse = (shown: unknown, expected: string) => {
    throw new ParameterError(`invalid parameter \`${name}\`: ${shown}; expected ${expected}`);
  };
  if (!["string", "number", "boolean"].includes(typeof value) || Number.isNaN(value)) {
    refuse(value, "a text, a number, true or false");
  }
  if (typeof value === "number" && !Number.isFinite(value)) refuse(value, "a finite number");
  if (declared !== undefined && !declared.annotation && declared.type !== typeof value) {
    refuse(JSON.stringify(value), `a ${declared.type}, as the notebook declares it`);
  }
  const annotation = declared?.annotation ? `: ${declared.annotation}` : "";
  return `let ${name}${annotation} = ${JSON.stringify(value)};\n`;
}

/**
 * Sets parameters of a notebook: puts a cell tagged `injected-parameters` after the cell tagged
 * `parameters`, or first where there is none, in the place of an older injected cell.
 *
 * The parameters cell holds literals only, `let name = literal;` a line. A value has the type of the
 * literal that it stands for; where the declaration has a type annotation, that is repeated and the
 * kernel's compiler judges. Cells below see the new value, because a later `let` of the same name
 * takes the place of the first in this kernel.
 *
 * @param notebook not changed
 * @param values nothing to set: the notebook comes back as it is
 * @throws ParameterError for a name that the parameters cell does not declare, a value of another
 * type, or a line of the parameters cell that is no literal declaration
 *
 * @example
 * const cell = { cell_type: "code", id: "a", metadata: { tags: ["parameters"] }, source: "let n = 1;" };
 * const notebook = { nbformat: 4, nbformat_minor: 5, metadata: {}, cells: [cell] };
 * injectParameters(notebook, { n: 2 }).cells[1].source // => ["let n = 2;"]
 */
export function injectParameters(
  notebook: NotebookFile,
  values: Readonly<Record<string, ParameterValue>>,
): NotebookFile {
  const names = Object.keys(values);
  if (names.length === 0) return notebook;
  const cells = notebook.cells.filter((cell) => !tagsOf(cell).includes(INJECTED_TAG));
  const at = cells.findIndex(
    (cell) => cell.cell_type === "code" && tagsOf(cell).includes(PARAMETERS_TAG),
  );
  const declared = at < 0 ? undefined : declarations(cells[at] as NotebookCell);
  const unknown = names.filter(
    (name) =>
      !/^[A-Za-z_$][\w$]*$/.test(name) || declared?.every((known) => known.name !== name) === true,
  );
  if (unknown.length > 0) {
    const known = declared?.map(({ name }) => name).join(", ") || "any identifier";
    throw new ParameterError(`unknown parameter: ${unknown.join(", ")}; expected one of: ${known}`);
  }
  const source = names.map((name) =>
    line(
      name,
      values[name] as ParameterValue,
      declared?.find((known) => known.name === name),
    ),
  );
  const taken = new Set(cells.map((cell) => cell.id));
  let id = INJECTED_TAG;
  for (let number = 1; taken.has(id); number += 1) id = `${INJECTED_TAG}-${number}`;
  const injected: NotebookCell = {
    cell_type: "code",
    id,
    metadata: { tags: [INJECTED_TAG] },
    source: splitText(source.join("").trimEnd()),
    execution_count: null,
    outputs: [],
  };
  return { ...notebook, cells: [...cells.slice(0, at + 1), injected, ...cells.slice(at + 1)] };
}

/**
 * The same notebook with another value of an injected parameter: for a document that is handed on, where
 * the folder on this machine that a notebook was run with says nothing and would change with every move.
 *
 * @param notebook not changed; its outputs stay
 */
export function restateParameter(
  notebook: NotebookFile,
  name: string,
  value: ParameterValue,
): NotebookFile {
  const start = `let ${name}`;
  const restated = (source: string) =>
    source.replace(/^let [^\n]*$/gm, (whole) => {
      const [declaration] = whole.split(" = ");
      return declaration === start || declaration.startsWith(`${start}:`)
        ? `${declaration} = ${JSON.stringify(value)};`
        : whole;
    });
  const cells = notebook.cells.map((cell) =>
    tagsOf(cell).includes(INJECTED_TAG)
      ? { ...cell, source: splitText(restated(joinText(cell.source))) }
      : cell,
  );
  return { ...notebook, cells };
}
