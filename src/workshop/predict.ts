import type { NoteBlock } from "../tables/reportBlock.js";
import { localNumber } from "../words/language.js";
import { say } from "../words/say.js";
import { workshopMemory } from "./workshopMemory.js";

/**
 * Records what somebody expects before a value is computed. The first prediction stands: one that is made
 * after the computed value was shown by `comparePredictions` is kept as an afterthought only where there
 * was none before.
 *
 * @param name as `comparePredictions` names the value.
 * @param value a number or a short text; `undefined`, `null`, an empty text or NaN is no prediction.
 *
 * @example
 * predict("parts of sand to one of soil", 0.5).text // => "Predicted, parts of sand to one of soil: 0.5."
 * predict("gravel, %", undefined).text // => "No prediction yet, gravel, %. A guess that misses teaches more than none."
 */
export function predict(name: string, value: unknown): NoteBlock {
  const note = (text: string): NoteBlock => ({ kind: "note", tone: "note", text });
  const { predictions, revealed } = workshopMemory;
  const usable =
    (typeof value === "number" && Number.isFinite(value)) ||
    (typeof value === "string" && value.trim() !== "");
  if (!usable) {
    return value === undefined || value === null || value === ""
      ? note(say`No prediction yet, ${name}. A guess that misses teaches more than none.`)
      : note(say`No prediction yet, ${name}: write one number, or a few words in quotation marks.`);
  }
  const said = typeof value === "number" ? value : String(value).trim();
  const shown = typeof said === "number" ? localNumber(String(said)) : said;
  if (!revealed.has(name)) {
    predictions.set(name, { value: said, afterwards: false });
    return note(say`Predicted, ${name}: ${shown}.`);
  }
  if (predictions.has(name)) {
    return note(
      say`The computed value was shown already, so the first prediction stands, ${name}.`,
    );
  }
  predictions.set(name, { value: said, afterwards: true });
  return note(
    say`The computed value was shown already: kept as an afterthought, ${name}: ${shown}.`,
  );
}
