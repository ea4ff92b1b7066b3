import { createRequire } from "node:module";
import { join } from "node:path";
import { expect, it } from "vitest";
import { asNotebook, joinText, type NotebookFile } from "../../src/notebook/notebookFile.js";
import { runNotebook } from "../../src/notebook/runNotebook.js";
import type { Language } from "../../src/words/render.js";
import { render } from "../../src/words/render.js";
import { answerKey } from "../../src/workshop/answerKey.js";
import { LESSONS, lessonExercises } from "../../src/workshop/lesson.js";
import { openClass } from "../../src/workshop/openClass.js";
import { ROOT } from "../support/runCli.js";

const { shownText } = createRequire(import.meta.url)("../../bin/make-workshop.cjs") as {
  shownText(notebook: NotebookFile): string;
};

/** Told on purpose: the question, or the note that comes with it, holds this number for another reason. */
const TOLD_ELSEWHERE: Readonly<Record<string, string>> = {
  // one of the contents that were tested, in the text of the chart
  "cement-by-volume": "10",
  // a small count, which limits of the envelope's text hold too ("5.00 to 20.0 %")
  "outside-of-how-many": "5",
};

it.each(
  LESSONS.flatMap(({ id }) => (["en", "es"] as const).map((language) => [id, language] as const)),
)(
  "the notebook %s (%s), run from the top with no answer, tells none",
  async (id, language: Language) => {
    const file = `workshop-${id}${language === "en" ? "" : ".es"}.ipynb`;
    const { status, notebook } = await runNotebook({
      notebookPath: join(ROOT, "notebooks", file),
    });
    expect(status).toBe("done");
    const shown = shownText(notebook);
    const day = await openClass(join(ROOT, "data-examples", "class-day"), { language });
    const { core, further } = lessonExercises(day, id);
    const exercises = [...core, ...further];
    expect(exercises.length).toBeGreaterThan(3);
    const words = (text: Parameters<typeof render>[0]) => render(text, language);
    for (const exercise of exercises) {
      expect(shown).not.toContain(words(exercise.worked));
      // the caution of the recommendations, which stands beside their limits before anything is asked
      if (exercise.id !== "what-inside-proves") expect(shown).not.toContain(words(exercise.why));
      if (exercise.kind === "choice" || exercise.id in TOLD_ELSEWHERE) continue;
      const told = [2, 3].map((digits) => exercise.value.toPrecision(digits));
      told.push(words(answerKey("", [exercise]).rows[0][1]).split(/\s/u)[0]);
      for (const one of told.filter((text) => text.replace(/\D/g, "").length > 2)) {
        const pattern = one.replace(".", "[.,]");
        const found = new RegExp(`.{0,60}(?<![\\d.,])${pattern}(?![\\d]|[.,]\\d).{0,40}`).exec(
          shown,
        );
        expect(found?.[0], `${exercise.id}: ${one}`).toBeUndefined();
      }
    }
    // a table of solutions waits for each question
    expect(shown).toMatch(language === "en" ? /waits for an answer/ : /espera una respuesta/);
  },
  120_000,
);

it.each(LESSONS.map(({ id }) => id))(
  "the notebook %s, run with every question given up, shows all its tables",
  async (id) => {
    const { readFileSync, writeFileSync } = await import("node:fs");
    const path = join(ROOT, "notebooks", `workshop-${id}.ipynb`);
    const notebook = asNotebook(JSON.parse(readFileSync(path, "utf8")));
    const cells = notebook.cells.map((cell) => ({
      ...cell,
      source: joinText(cell.source).replace("= undefined;", '= "?";'),
    }));
    const { temporaryFolder } = await import("../support/runCli.js");
    const given = join(temporaryFolder(), "given.ipynb");
    const data = JSON.stringify(join(ROOT, "data-examples"));
    const text = JSON.stringify({ ...notebook, cells });
    writeFileSync(given, text.replaceAll("../data-examples", JSON.parse(data)));
    const run = await runNotebook({ notebookPath: given });
    expect(run.status).toBe("done");
    expect(shownText(run.notebook)).not.toMatch(/waits for/);
  },
  120_000,
);
