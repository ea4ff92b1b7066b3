import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import * as loam from "../../src/index.js";
import { TEXT_MIME, toBundle } from "../../src/notebook/mimeBundle.js";
import { asNotebook, joinText } from "../../src/notebook/notebookFile.js";
import { type Language, render } from "../../src/words/render.js";
import { answerKey } from "../../src/workshop/answerKey.js";
import type { Exercise, NumberExercise } from "../../src/workshop/exercise.js";
import { LESSONS, type LessonId, lessonExercises } from "../../src/workshop/lesson.js";
import { type ClassOptions, openClass } from "../../src/workshop/openClass.js";
import { openPredictions } from "../../src/workshop/session.js";
import { ROOT } from "../support/runCli.js";

/** A code cell and the texts that it shows. */
interface Shown {
  readonly code: string;
  readonly text: string;
}

const asked = (code: string) => /checkAnswer\("([\w-]+)"/.exec(code)?.[1];

/** The same call gives the same result: a class, its tables and figures, and their texts, are made once. */
function once<Args extends readonly unknown[], Made>(make: (...args: Args) => Made) {
  const made: { readonly args: Args; readonly result: Made }[] = [];
  return (...args: Args): Made => {
    const known = made.find((one) => args.every((arg, index) => one.args[index] === arg));
    if (known) return known.result;
    const result = make(...args);
    made.push({ args, result });
    return result;
  };
}

const textOf = once(async (value: unknown, language: Language): Promise<string> => {
  const text = (await toBundle(value, language)).data[TEXT_MIME];
  if (typeof text !== "string") throw new Error("nothing is shown as text");
  return text;
});

const classIn = once((folder: string, language: Language) => openClass(folder, { language }));
const remembered = {
  ...Object.fromEntries(
    Object.entries(loam)
      .filter(([name]) => /^class[A-Z]/.test(name))
      .map(([name, make]) => [name, once(make as (...args: unknown[]) => unknown)]),
  ),
  openClass: (folder: string, { language = "en" }: ClassOptions) => classIn(folder, language),
};

/** Runs the cells of a lesson one after another in this process, each answer cell as `typed` says. */
async function runLesson(
  id: LessonId,
  language: Language,
  typed: (code: string) => string,
): Promise<Shown[]> {
  // what another run predicted in this process is forgotten
  openPredictions([]);
  const file = `workshop-${id}${language === "en" ? "" : ".es"}.ipynb`;
  const notebook = asNotebook(JSON.parse(readFileSync(join(ROOT, "notebooks", file), "utf8")));
  const codes = notebook.cells
    .filter(({ cell_type }) => cell_type === "code")
    .map(({ source }) => joinText(source));
  const texts = codes.map((): string[] => []);
  let at = 0;
  const showIn = () => async (value: unknown) => {
    texts[at].push(await textOf(value, language));
  };
  const source = codes
    .map((code, index) => `at(${index});\n${typed(code)}`)
    .join("\n")
    .replace(/^import .*$/m, "")
    .replaceAll("../data-examples", join(ROOT, "data-examples").replaceAll("\\", "/"));
  // the cells are plain JavaScript but for that
  const script = source.replaceAll(" as const", "");
  const run = new Function("loam", "at", `return (async () => {\n${script}\n})();`);
  const toCells = { ...loam, ...remembered, showIn };
  await run(toCells, (index: number) => {
    at = index;
  });
  return codes.map((code, index) => ({ code, text: texts[index].join("\n") }));
}

const blank = (code: string) => code;
/** Everything is predicted, and every question but one given up. */
const allBut = (id: string) => (code: string) =>
  asked(code) === id
    ? code
    : code.replace("= undefined;", /predict\(/.test(code) ? "= 1;" : '= "?";');

const exercisesOf = once(async (id: LessonId, language: Language): Promise<readonly Exercise[]> => {
  const day = await classIn(join(ROOT, "data-examples", "class-day"), language);
  const { core, further } = lessonExercises(day, id);
  return [...core, ...further];
});

/** A whole number of things: told by its digits alone, never as `5.00`. */
const isCount = ({ unit, value }: NumberExercise) => unit === "" && Number.isInteger(value);

/** Where a text tells what is right, or how or why. */
function toldIn(text: string, exercise: Exercise, language: Language): string | undefined {
  const words = (said: Parameters<typeof render>[0]) => render(said, language);
  const working = [exercise.worked, exercise.why].map(words).find((one) => text.includes(one));
  if (working !== undefined || exercise.kind === "choice") return working;
  const key = words(answerKey("", [exercise]).rows[0][2]).split(/\s/u)[0];
  const forms = isCount(exercise)
    ? [key]
    : [...[2, 3].map((digits) => exercise.value.toPrecision(digits)), key].filter(
        (one) => one.replace(/\D/g, "").length > 2,
      );
  return forms
    .map((one) => `.{0,80}(?<![\\d.,])${one.replace(".", "[.,]")}(?![\\d]|[.,]\\d).{0,40}`)
    .map((pattern) => new RegExp(pattern).exec(text)?.[0])
    .find((found) => found !== undefined);
}

const RUNS = LESSONS.flatMap(({ id }) => (["en", "es"] as const).map((at) => [id, at] as const));

// first, as what was predicted once stands as long as the process
it.each(RUNS)("%s (%s), run from the top with no answer, tells none", async (id, language) => {
  const shown = (await runLesson(id, language, blank)).map(({ text }) => text).join("\n");
  const exercises = await exercisesOf(id, language);
  expect(exercises.length).toBeGreaterThan(3);
  for (const exercise of exercises) {
    expect(toldIn(shown, exercise, language), exercise.id).toBeUndefined();
  }
  expect(shown).toMatch(language === "en" ? /waits for an answer/ : /espera una respuesta/);
});

describe.each(RUNS)("%s (%s)", (id, language) => {
  it("tells no answer while it is not given, whatever else was", async () => {
    const exercises = await exercisesOf(id, language);
    for (const exercise of exercises) {
      const cells = await runLesson(id, language, allBut(exercise.id));
      const own = cells.findIndex(({ code }) => asked(code) === exercise.id);
      // the working of a later question may rest on this one
      const text = cells
        .filter(({ code }, index) => index < own || asked(code) === undefined)
        .map((cell) => cell.text);
      expect(toldIn(text.join("\n"), exercise, language), exercise.id).toBeUndefined();
    }
  });

  it("tells no answer in what is said about a question before", async () => {
    const order = (await runLesson(id, language, blank)).flatMap(({ code }) => asked(code) ?? []);
    const exercises = await exercisesOf(id, language);
    expect([...order].sort()).toEqual(exercises.map((one) => one.id).sort());
    const said = ({ question, hint, why, mistakes }: Exercise) =>
      [question, hint, why, ...mistakes.map(({ text }) => text)]
        .map((text) => render(text, language))
        .join("\n");
    for (const exercise of exercises) {
      const before = exercises.filter((one) => order.indexOf(one.id) < order.indexOf(exercise.id));
      const text = before.map(said).join("\n");
      expect(toldIn(text, exercise, language), exercise.id).toBeUndefined();
    }
  });

  it("shows all its tables to whoever gives every question up", async () => {
    const cells = await runLesson(id, language, allBut(""));
    const texts = cells.map(({ text }) => text).join("\n");
    expect(texts).not.toMatch(/waits for|espera una/);
  });
});
