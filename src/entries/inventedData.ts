import { CST, Lexer } from "yaml";
import { type Finding, type FindingPlace, finding, STUDY_FILE } from "../findings/finding.js";
import type { SheetGrid } from "../lab/sheet/grid.js";
import { say, type Text } from "../words/message.js";
import type { StudyConfig } from "./studyConfig.js";

/** Texts that “loambook new” writes where only the user can know what holds. */
export const PLACEHOLDERS = {
  title: "A study to start from",
  place: "Write where the wall will stand",
  cement: "Portland cement, invented brand",
  basis: "Write the code and clause, or the engineer's letter, that asks for this strength.",
} as const;

/** Marks that “loambook new” sets behind entries of `study.yaml`, without the sign of a remark. */
export const INVENTED_MARKS = {
  sheet: "invented: replace this sheet",
  entry: "invented",
  cement: "Invented: the brand, its density and its price.",
} as const;

/** How the remark of an invented sheet or entry begins. */
const MARK = /^#\s*invented\b/i;

/** Whether a row of a sheet says that its numbers are invented. */
export function isMarkedInvented(cells: readonly string[]): boolean {
  return MARK.test(cells.find((cell) => cell !== "") ?? "");
}

/**
 * What still says that a study is invented, though its entry `invented` says otherwise: remarks at the
 * head of sheets and behind entries, and the texts that a new study begins with. Each is an error, as the
 * pages would go out without their warning. None where the study says that it is invented.
 *
 * @param text of `study.yaml`. @param sheets all sheets as read. @param rowOf of `parseStudyYaml`.
 */
export function inventedFindings(
  text: string,
  config: StudyConfig,
  sheets: readonly SheetGrid[],
  rowOf: (path: readonly string[]) => number | undefined,
): Finding[] {
  if (config.invented) return [];
  const expected = say`your own, and no mark of invented data, as the study says “invented: false”`;
  const told = (place: FindingPlace, message: Text, remedy: Text) =>
    finding(place, "error", "invented-data", { message, expected, remedy });
  const inSheets = sheets.flatMap(({ file, rows }) =>
    rows.flatMap((row, index): Finding[] => {
      if (!isMarkedInvented(row)) return [];
      const value = row.filter((cell) => cell !== "").join(", ");
      return [
        told(
          { file, row: index + 1, value },
          say`This sheet is marked as invented.`,
          say`Put your own readings in its place, without this remark, or set “invented: true”.`,
        ),
      ];
    }),
  );
  const inEntries = remarksOf(text).flatMap(({ remark, row, before }): Finding[] => {
    if (!MARK.test(remark)) return [];
    const [, key, value] = /^[\s-]*([^\s:#]+):\s*(.*?)\s*$/.exec(before) ?? [];
    return [
      told(
        { file: STUDY_FILE, row, column: key, value: value || remark },
        key === undefined
          ? say`What follows is marked as invented.`
          : say`This entry is marked as invented.`,
        say`Write your own and take away the remark “${remark}”, or set “invented: true”.`,
      ),
    ];
  });
  const same = (written: string | undefined, placeholder: string) =>
    written?.trim().replace(/\s+/g, " ").toLowerCase() === placeholder.toLowerCase();
  const texts = [
    [["title"], config.title, PLACEHOLDERS.title],
    [["place"], config.place, PLACEHOLDERS.place],
    [["cement", "name"], config.cement?.name, PLACEHOLDERS.cement],
    [["strength", "requirement", "basis"], config.strength.requirement?.basis, PLACEHOLDERS.basis],
  ] as const;
  const inTexts = texts.flatMap(([path, written, placeholder]): Finding[] => {
    if (!same(written, placeholder)) return [];
    return [
      told(
        { file: STUDY_FILE, row: rowOf(path), column: path.join("."), value: written },
        say`This is the text that a new study begins with.`,
        say`Write what holds for your wall, or set “invented: true”.`,
      ),
    ];
  });
  return [...inSheets, ...inTexts, ...inEntries];
}

/** The remarks of a YAML text, each with its row and what stands before it in its line. */
function remarksOf(text: string) {
  const lines = text.split(/\r?\n/);
  const remarks: { remark: string; row: number; before: string }[] = [];
  let row = 1;
  let isScalar = false;
  for (const lexeme of new Lexer().lex(text)) {
    // what follows this sign is a text of the user, whatever it begins with
    if (lexeme === CST.SCALAR) {
      isScalar = true;
      continue;
    }
    if (lexeme.startsWith("#") && !isScalar) {
      const line = lines[row - 1];
      remarks.push({ remark: lexeme, row, before: line.slice(0, line.lastIndexOf(lexeme)) });
    }
    row += lexeme.split("\n").length - 1;
    isScalar = false;
  }
  return remarks;
}
