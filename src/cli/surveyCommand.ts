import { createReadStream, createWriteStream, existsSync } from "node:fs";
import { basename } from "node:path";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { surveyCsv } from "../soil/survey/surveyCsv.js";
import { surveyGradings } from "../soil/survey/surveyGradings.js";
import { CommandError, EXIT, parseCall } from "./call.js";
import { progressLine, writeNewFile } from "./output.js";

const MODELS = ["weibull", "lognormal", "power"] as const;

const OPTIONS = {
  out: { type: "string" },
  model: { type: "string", default: "weibull" },
  threads: { type: "string", default: "2" },
} as const;

/** `loambook survey`: many gradings of one file to a table of fits and classes. */
export async function surveyCommand(words: readonly string[]): Promise<number> {
  const call = parseCall("survey", words, OPTIONS, 1);
  const file = call.place as string;
  const out = call.text("out");
  const model = MODELS.find((name) => name === call.text("model"));
  const threads = Number(call.text("threads"));
  if (!model) {
    throw new CommandError(EXIT.usage, `Unknown model: give ${MODELS.join(", ")}.`);
  }
  if (!(Number.isInteger(threads) && threads >= 0 && threads <= 16)) {
    throw new CommandError(EXIT.usage, "--threads takes a whole number from 0 to 16.");
  }
  if (out === undefined) {
    throw new CommandError(EXIT.usage, "Say with --out where the table is to be written.");
  }
  if (!existsSync(file)) throw new CommandError(EXIT.badInput, `There is no file ${file}.`);
  if (existsSync(out)) {
    throw new CommandError(EXIT.output, `${out} exists already. Give another name.`);
  }
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
