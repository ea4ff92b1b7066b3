import { expect, it } from "vitest";
import { photographsFigure } from "../../src/figures/photographs.js";
import { figurePng } from "../../src/figures/svg/figurePng.js";
import type { Photograph } from "../../src/study/photographs.js";
import { renderAll } from "../../src/words/render.js";

const bytes = figurePng(`<svg xmlns="http://www.w3.org/2000/svg" width="6" height="4"/>`, 1);

/** The lines below four photographs of blocks of a trial, and how many stand side by side. */
function drawn(trial: string, seen: Partial<Photograph>) {
  const block = { trial, file: "b.png", type: "png", bytes, widthPx: 6, heightPx: 4 } as const;
  const photographs = ["A", "B", "C", "D"].map(
    (id) => ({ ...block, turnDegrees: 0, id, ...seen }) as Photograph,
  );
  const { layout } = renderAll(photographsFigure("Blocks", photographs)) as unknown as {
    readonly layout: { readonly annotations: readonly { text: string; x: number; y: number }[] };
  };
  const [first, ...others] = layout.annotations;
  const across = 1 + others.filter(({ y }) => y === first.y).length;
  return [first.text, across];
}

it("names each block, and who noted it, and when; fewer stand side by side where a line is long", () => {
  expect(drawn("More sand", {})).toEqual(["More sand, A<br>observer and date not stated", 3]);
  expect(drawn("More sand", { seenOn: "2026-06-12" })).toEqual([
    "More sand, A<br>noted on 2026-06-12",
    3,
  ]);
  expect(drawn("More sand", { seenBy: "the class" })).toEqual([
    "More sand, A<br>noted by the class",
    3,
  ]);
  // 36 letters in English are 39 in Spanish.
  const seen = { seenBy: "the second year", seenOn: "2026-06-12" };
  expect(drawn("More sand", seen)).toEqual([
    "More sand, A<br>noted by the second year, 2026-06-12",
    2,
  ]);
  expect(drawn("A blend with much more of the river sand", {})[1]).toBe(2);
});
