import { createReadStream, createWriteStream, existsSync } from "node:fs";
import { basename } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { surveyCsv } from "../soil/survey/surveyCsv.js";
import { surveyGradings } from "../soil/survey/surveyGradings.js";
import { CommandError, EXIT, misuse, parseCall } from "./call.js";
import { newFile, progressLine, writeNewFile } from "./output.js";

const MODELS = ["weibull", "lognormal", "power"] as const;

const OPTIONS = { texts: ["out"], defaults: { model: "weibull", threads: "2" } };

/** `loambook survey`: many gradings of one file to a table of fits and classes. */
export async function surveyCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("survey", words, OPTIONS, 1);
  const file = call.place;
  const model = MODELS.find((name) => name === call.text("model"));
  const threads = Number(call.text("threads"));
  if (!model) throw misuse(`Unknown model: give ${MODELS.join(", ")}.`);
  if (!(Number.isInteger(threads) && threads >= 0 && threads <= 16)) {
    throw misuse("--threads takes a whole number from 0 to 16.");
  }
  const out = newFile(call);
  if (out === undefined) throw misuse("Say with --out where the table is to be written.");
  if (!existsSync(file)) throw new CommandError(EXIT.badInput, `There is no file ${file}.`);
  const progress = progressLine();
  let [rows, leftOut] = [0, 0];
  const survey = surveyGradings(createReadStream(file), {
    file: basename(file),
    model,
    threads,
    progress: (at) => {
      rows = at.rows;
      leftOut = at.leftOut;
      progress.show(`${rows} gradings`);
    },
  });
  try {
    await writeNewFile(out, (draft) =>
      pipeline(Readable.from(surveyCsv(survey, model)), createWriteStream(draft, { flags: "wx" })),
    );
  } finally {
    progress.clear();
  }
  process.stdout.write(
    `${rows} gradings, ${leftOut} of them left out with the reason in the last column: ${out}\n`,
  );
  return leftOut === rows ? EXIT.badInput : EXIT.ok;
}
