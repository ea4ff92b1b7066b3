import { basename, resolve } from "node:path";
import { blockText } from "../blocks/partText.js";
import { attributeChanges } from "../study/attribution.js";
import { compareStudies } from "../study/compareStudies.js";
import { openWithSheets } from "../study/openStudy.js";
import type { StudyResult } from "../study/studyResult.js";
import { attributionTable, studyComparisonTable } from "../tables/studyComparison.js";
import { EXIT, parseCall } from "./call.js";
import { newFile, printOrWrite } from "./output.js";

/** `loambook compare`: what differs between two versions of a study, and what is due to what. */
export async function compareCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("compare", words, { flags: ["json"], texts: ["out"] }, 2);
  const out = newFile(call);
  const [first, second] = [
    await openWithSheets(call.places[0]),
    await openWithSheets(call.places[1]),
  ];
  const steps = attributeChanges(first.study, second.study);
  const [a, b] = [first.result, second.result];
  const output = call.flag("json")
    ? `${JSON.stringify({ ...compareStudies(a, b), dueTo: steps }, undefined, 2)}\n`
    : comparisonText(a, b, call.places, steps);
  await printOrWrite(out, output);
  return EXIT.ok;
}

function comparisonText(
  a: StudyResult,
  b: StudyResult,
  places: readonly string[],
  steps: ReturnType<typeof attributeChanges>,
): string {
  const [first, second] = places.map((place) => basename(resolve(place)));
  const [results, entries] = studyComparisonTable(a, b, [first, second]);
  const blocks = [results, attributionTable(a, b, steps), entries];
  return `${blocks.map((block) => blockText(block, b.config.language)).join("\n\n")}\n`;
}
