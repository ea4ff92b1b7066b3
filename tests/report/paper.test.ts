import { join } from "node:path";
import { expect, it } from "vitest";
import { renderPaper } from "../../src/report/paper.js";
import { openClass } from "../../src/workshop/openClass.js";
import { worksheet } from "../../src/workshop/papers.js";
import { ROOT } from "../support/runCli.js";
import { readPdf } from "./readPdf.js";

it("sets the worksheet as a handout, the same bytes again, every question whole on one page", async () => {
  const day = await openClass(join(ROOT, "data-examples", "class-day"), { language: "es" });
  const meta = {
    title: "Clase",
    date: "2026-04-11",
    language: "es",
    page: "A4",
    invented: true,
  } as const;
  const pdf = await renderPaper(worksheet(day), meta);
  expect(Buffer.compare(pdf, await renderPaper(worksheet(day), meta))).toBe(0);
  const { pages } = await readPdf(pdf);
  const all = pages.join(" ").replace(/\s+/g, " ");
  expect(all).toContain("Hoja de trabajo");
  expect(all).not.toMatch(/undefined|\[object|\{\d\}/);
  for (let number = 1; number <= 23; number += 1) {
    const page = pages.find((text) => new RegExp(`(^|\\s)${number}\\. [¿A-ZÁÉÍÓÚ0-9]`).test(text));
    expect(page, `question ${number}`).toBeDefined();
  }
  // a question's last line, for its answer, stands on the page of the question
  const [asking] = pages.filter((text) => text.includes("¿Cuánto pasa por el tamiz más fino"));
  expect(asking).toMatch(/¿Cuánto pasa por el tamiz más fino[\s\S]*Respuesta, %/);
});
