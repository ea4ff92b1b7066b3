import { readFileSync } from "node:fs";
import { chromium } from "playwright-core";
import { describe, expect, test } from "vitest";
import { fontFile, measureText } from "../../src/figures/svg/sourceSans.js";
import { CHROMIUM, CHROMIUM_ARGUMENTS, chromiumOrSkip } from "../report/chromium.js";

describe("text boxes against a real browser", () => {
  test("widths and heights agree within 1 % or half a pixel", async (context) => {
    chromiumOrSkip(context);
    const words = ["Passing, % by dry mass", "AVATAR To. 1.75", "fines below 63 µm", "−3 ≤ x"];
    const font = readFileSync(fontFile("400Regular")).toString("base64");
    const texts = words.map((word) => `<text y="50" font-size="13">${word}</text>`).join("");
    const page = `<style>@font-face{font-family:S;src:url(data:font/ttf;base64,${font})}text{font-family:S}</style><svg>${texts}</svg>`;
    const browser = await chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGUMENTS });
    try {
      const view = await browser.newPage();
      await view.setContent(page);
      const script =
        "document.fonts.ready.then(() => [...document.querySelectorAll('text')].map((t) => t.getBBox()).map((b) => [b.width, b.height]))";
      const boxes = (await view.evaluate(script)) as [number, number][];
      words.forEach((word, index) => {
        const { widthPx, ascentPx, descentPx } = measureText(word, 13);
        const [width, height] = boxes[index]!;
        expect(Math.abs(widthPx - width), word).toBeLessThan(Math.max(0.5, width / 100));
        // a browser rounds ascent and descent to whole pixels
        expect(Math.abs(ascentPx + descentPx - height), word).toBeLessThan(1);
      });
    } finally {
      await browser.close();
    }
  });
});
