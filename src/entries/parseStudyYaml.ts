import { isNode, LineCounter, parseDocument } from "yaml";
import type { z } from "zod";
import type { Finding } from "../findings/finding.js";
import { say, type Text, wordFor } from "../words/message.js";
import { nearestName } from "../words/nearestName.js";
import type { Language, Locale } from "../words/render.js";
import type { StudyConfig } from "./studyConfig.js";
import { knownKeys } from "./studyJsonSchema.js";
import { LOCALE, studySchema } from "./studySchema.js";

export const STUDY_FILE = "study.yaml";

/** Reads the text of `study.yaml`: the checked content, or findings with row and key for every problem. */
export function parseStudyYaml(
  text: string,
  language?: Language,
): { config?: StudyConfig; findings: Finding[]; locale: Locale } {
  const lines = new LineCounter();
  // Dates stay text: the core schema has no timestamp type. Aliases cannot blow up: their count is bounded.
  const document = parseDocument(text, { lineCounter: lines, prettyErrors: true });
  if (document.errors.length > 0) {
    return {
      locale: language ?? "en",
      findings: document.errors.map((problem) => ({
        severity: "error",
        code: "yaml-error",
        file: STUDY_FILE,
        row: problem.linePos?.[0].line,
        message: say`This is not valid YAML: ${problem.message.split("\n")[0].replace(/ at line .*$/, "")}.`,
        expected: say`lines of “key: value”, indented by spaces`,
        remedy: say`Put texts that hold : # '{' [ or quotes between single quotes.`,
      })),
    };
  }
  const locale = localeOf(document.get("language"), language);
  const outcome = studySchema.safeParse(document.toJS({ maxAliasCount: 50 }));
  if (outcome.success) {
    const config = { ...outcome.data, language: locale };
    return { config, findings: repeatedIds(config), locale };
  }

  const rowOf = (path: readonly PropertyKey[]): number | undefined => {
    for (let length = path.length; length > 0; length--) {
      const node = document.getIn(path.slice(0, length), true);
      if (isNode(node) && node.range) return lines.linePos(node.range[0]).line;
    }
    return undefined;
  };
  const findings = outcome.error.issues.flatMap((issue) => toFindings(issue, rowOf, document));
  return { findings, locale };
}

/** The study's language, chosen before its entries are checked, so that what is wrong with them is said in it. */
function localeOf(asked: unknown, language: Language | undefined): Locale {
  const own = LOCALE.test(String(asked)) ? (String(asked) as Locale) : "en";
  return language === undefined || own.split("-")[0] === language ? own : language;
}

function toFindings(
  issue: z.core.$ZodIssue,
  rowOf: (path: readonly PropertyKey[]) => number | undefined,
  document: { getIn(path: readonly unknown[]): unknown },
): Finding[] {
  const column = issue.path.map(String).join(".");
  const base = { severity: "error" as const, file: STUDY_FILE, row: rowOf(issue.path), column };
  if (issue.code === "unrecognized_keys") {
    const known = knownKeys(issue.path);
    return issue.keys.map((key) => ({
      ...base,
      row: rowOf([...issue.path, key]) ?? base.row,
      code: "unknown-key",
      column: [...issue.path, key].map(String).join("."),
      value: key,
      message: say`The key “${key}” is not known here.`,
      expected: say`one of ${known.join(", ")}`,
      remedy: spelling(nearestName(key, known)),
    }));
  }
  const params = issue.code === "custom" ? issue.params : undefined;
  const found = params?.value ?? document.getIn([...issue.path]);
  const missing = found === undefined;
  return [
    {
      ...base,
      code: missing ? "missing-key" : "wrong-value",
      value: missing || typeof found === "object" ? undefined : String(found),
      message: missing ? say`This key is missing.` : sentence(issue.message),
      expected: (params?.expected as Text | undefined) ?? expectation(issue),
      remedy: missing ? say`Add the key to study.yaml.` : say`Correct the value in study.yaml.`,
    },
  ];
}

function spelling(nearest: string | undefined): Text {
  return nearest === undefined
    ? say`Correct its spelling, or take it out.`
    : say`Write “${nearest}” if that was meant; otherwise take it out.`;
}

function expectation(issue: z.core.$ZodIssue): Text {
  if (issue.code === "invalid_value") return say`one of ${issue.values.map(String).join(", ")}`;
  if (issue.code === "invalid_type") return say`a value of type ${issue.expected}`;
  if (issue.code === "too_small") return say`at least ${Number(issue.minimum)}`;
  if (issue.code === "too_big") return say`at most ${Number(issue.maximum)}`;
  if (issue.code === "invalid_format") return say`the form of ${issue.format}`;
  if (issue.code === "invalid_union") return say`a number with its unit`;
  return say`a value of the study format (see the README)`;
}

function sentence(text: string): Text {
  return wordFor(/[.!?]$/.test(text) ? text : `${text}.`);
}

function repeatedIds(config: StudyConfig): Finding[] {
  return config.materials.flatMap(({ id }, index) =>
    config.materials.findIndex((other) => other.id === id) === index
      ? []
      : [
          {
            severity: "error" as const,
            code: "repeated-material",
            file: STUDY_FILE,
            column: `materials.${index}.id`,
            value: id,
            message: say`Two materials have this id.`,
            expected: say`each id once`,
            remedy: say`Rename one of them.`,
          },
        ],
  );
}
