import { inUnits } from "../quantities/format.js";
import { parseNumber, parseQuantity } from "../quantities/parseQuantity.js";
import { programmeSheet, sheetCsv, testProgramme } from "../strength/programme.js";
import { render } from "../words/render.js";
import { type Call, CommandError, EXIT, misuse, parseCall } from "./call.js";
import { writeNewFile } from "./output.js";

const OPTIONS = {
  texts: ["contents", "difference", "sd"],
  defaults: { age: "28 d", batches: "2", seed: "1" },
};

/** `loambook plan`: how many blocks to make at which contents, as a sheet to fill in. */
export async function planCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("plan", words, OPTIONS, 1);
  const out = call.place;
  const programme = testProgramme({
    aim: { kind: "difference", differenceMpa: quantity(call, "difference", "stress", "0.3 MPa") },
    contentsPct: (call.text("contents") ?? "").split(",").map((text) => {
      const number = parseNumber(text);
      if ("value" in number && number.value >= 0 && number.value <= 30) return number.value;
      throw misuse("--contents takes percentages, for example 4,6,8,10.");
    }),
    sdMpa: quantity(call, "sd", "stress", "0.25 MPa"),
    ageDays: quantity(call, "age", "age", "28 d"),
    batchesAContent: whole(call, "batches", 1),
    seed: whole(call, "seed", 0),
  });
  // Whoever asks in psi is answered in psi, and reads a sheet in inches and pounds.
  const units = /(psi|lb|in2)/i.test(call.text("difference") ?? "") ? "US" : "SI";
  const message = render(inUnits(programme.message, units));
  if (programme.status !== "ok") throw new CommandError(EXIT.badInput, message);
  await writeNewFile(out, sheetCsv(programmeSheet(programme.blocks, out, units)));
  process.stdout.write(
    `${message}\n\n${programme.blocks.length} blocks in random order of making and crushing: ${out}\n` +
      "Filled in, it is the block sheet of a study.\n",
  );
  return EXIT.ok;
}

function quantity(
  call: Call,
  option: string,
  dimension: "stress" | "age",
  example: string,
): number {
  const parsed = parseQuantity(call.text(option) ?? "", dimension);
  if ("value" in parsed && parsed.value > 0) return parsed.value;
  throw misuse(`--${option} takes a value with its unit, for example “${example}”.`);
}

function whole(call: Call, option: string, least: number): number {
  const value = Number(call.text(option));
  if (Number.isInteger(value) && value >= least && value < 2 ** 32) return value;
  throw misuse(`--${option} takes a whole number from ${least}.`);
}
