import type { StudyResult } from "../study/studyResult.js";
import { say } from "../words/say.js";
import { missingKnowledge } from "./missingKnowledge.js";
import { touchedResults } from "./touchedResults.js";

/**
 * What to do after a check without errors, drawn from this study: which warnings bear on which result, and
 * what would make an open number known.
 *
 * @param place the study as it was named on the command line.
 */
export function whatNext(result: StudyResult, place: string): string {
  const { config, strength } = result;
  const group = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? [] : [title, ...lines.map((line) => `  - ${line}`)];
  const { chosenCementPct, leastCement } = strength;
  const noContent = chosenCementPct === undefined ? [leastCement.message] : [];
  const invented = config.invented
    ? [
        say`This study is marked “invented: true”: its numbers are nobody's, and every page says so.`,
      ]
    : [];
  return [
    ...group(say`Look at these first`, [...noContent, ...touchedResults(result)]),
    ...group(say`What would be known better`, missingKnowledge(result)),
    ...group(say`Then`, [
      ...invented,
      say`loambook appendix ${place} makes the technical appendix.`,
    ]),
  ].join("\n");
}
