import { type Document, isNode, LineCounter, parseDocument } from "yaml";
import { type Finding, finding, STUDY_FILE } from "../findings/finding.js";
import { say, type Text } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { Language, Locale } from "../words/render.js";
import { isGroup, type Kind, type Path, type Problem } from "./kinds.js";
import { LOCALE, STUDY } from "./study.js";
import type { StudyConfig } from "./studyConfig.js";

interface StudyEntries {
  /** Absent where a finding is an error. */
  readonly config?: StudyConfig;
  readonly findings: readonly Finding[];
  /** What the findings are to be said in. */
  readonly locale: Locale;
  /** The row of a key, or of the nearest key above it that is written. */
  readonly rowOf: (path: Path) => number | undefined;
}

/**
 * Reads the text of `study.yaml`: the checked content, or findings with row and key for every problem.
 *
 * @param language of the configuration and the findings, whatever the text says; a text in the same language
 * keeps its country. Default that of the text.
 */
export function parseStudyYaml(text: string, language?: Language): StudyEntries {
  const lines = new LineCounter();
  let document: Document.Parsed;
  let content: unknown;
  try {
    // Dates stay text: the core schema has no timestamp type.
    document = parseDocument(text, { lineCounter: lines, prettyErrors: true });
    // Aliases cannot blow up: their count is bounded.
    if (document.errors.length === 0) content = document.toJS({ maxAliasCount: 50 });
  } catch {
    // Aliases of aliases, or groups in groups without end.
    return { findings: [tooNested()], locale: language ?? "en", rowOf: () => undefined };
  }
  const rowOf = (path: Path): number | undefined => {
    const node = document.getIn(path, true);
    if (isNode(node) && node.range) return lines.linePos(node.range[0]).line;
    return path.length === 0 ? undefined : rowOf(path.slice(0, -1));
  };
  if (document.errors.length > 0) {
    const findings = document.errors.map(({ message, linePos }) => {
      const problem = message.split("\n")[0].replace(/ at line .*$/, "");
      return finding({ file: STUDY_FILE, row: linePos?.[0].line }, "error", "yaml-error", {
        message: say`This is not valid YAML: ${problem}.`,
        expected: say`lines of “key: value”, indented by spaces`,
        remedy: say`Put texts that hold : # '{' [ or quotes between single quotes.`,
      });
    });
    return { findings, locale: language ?? "en", rowOf };
  }
  const locale = localeOf(isGroup(content) ? content.language : undefined, language);
  const read = STUDY.read(content, []);
  if ("value" in read) {
    return { config: { ...read.value, language: locale }, findings: [], locale, rowOf };
  }
  const findings = read.problems.map((problem) => problemFinding(problem, rowOf(problem.path)));
  return { findings: findings.sort((a, b) => (a.row ?? 0) - (b.row ?? 0)), locale, rowOf };
}

function tooNested(): Finding {
  return finding({ file: STUDY_FILE }, "error", "yaml-error", {
    message: say`The entries lie too deep in each other, or refer to each other too often.`,
    expected: say`lines of “key: value”, indented by spaces`,
    remedy: say`Write the entries out, without & and * references.`,
  });
}

function localeOf(asked: unknown, language: Language | undefined): Locale {
  const own = LOCALE.test(String(asked)) ? (String(asked) as Locale) : "en";
  return language === undefined || own.split("-")[0] === language ? own : language;
}

function problemFinding(problem: Problem, row: number | undefined): Finding {
  const { path, code, value, message, expected } = problem;
  // The study itself has no key.
  const column = path.length === 0 ? undefined : path.join(".");
  const place = { file: STUDY_FILE, row, column, value };
  return finding(place, "error", code, { message, expected, remedy: remedyOf(problem) });
}

function remedyOf({ code, path, value = "", known = [] }: Problem): Text {
  if (code === "missing-key") return say`Add the key to study.yaml.`;
  if (code === "wrong-value") return say`Correct the value in study.yaml.`;
  if (code === "renamed-key") return say`Write “${known[0]}” in its place.`;
  const near = nearestName(value, known);
  if (near !== undefined) {
    return say`Write “${near}” if that was meant; otherwise take it out.`;
  }
  const places = placesOf(value, STUDY).filter((place) => place !== groupOf(path));
  if (places.length > 0) {
    return say`Such a key stands under ${places.slice(0, 3).join(", ")}: move it there, or take it out.`;
  }
  return say`Correct its spelling, or take it out.`;
}

function groupOf(path: Path): string {
  return path
    .slice(0, -1)
    .filter((step) => typeof step === "string")
    .join(".");
}

/** The groups of the table that know a key, such as `materials.share`; the top has no name and is left out. */
function placesOf(key: string, kind: Kind<unknown>, path: readonly string[] = []): string[] {
  const { parts } = kind;
  if (parts === undefined) return [];
  if (parts.kind === "list" || parts.kind === "names") return placesOf(key, parts.item, path);
  const below =
    parts.kind === "group"
      ? Object.entries(parts.rows).flatMap(([name, row]) =>
          placesOf(key, row.kind, [...path, name]),
        )
      : Object.values(parts.forms).flatMap((form) => placesOf(key, form, path));
  const here = parts.kind === "group" && key in parts.rows && path.length > 0;
  return [...new Set([...(here ? [path.join(".")] : []), ...below])];
}
