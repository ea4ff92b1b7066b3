import { isBasic, withoutTitle } from "../../src/figures/figure.js";
import type { DrawnElement } from "../../src/figures/svg/drawingDom.js";
import { type SvgBox, svgPageBox } from "../../src/figures/svg/geometry.js";
import { plotlyWindow } from "../../src/figures/svg/plotlyWindow.js";
import type { DrawableFigure } from "../../src/figures/svg/renderSvg.js";

interface Drawn {
  readonly text: string;
  readonly box: SvgBox;
}

/** Pixels by which boxes may touch: ascenders and descenders leave more room than that. */
const TOUCH_PX = 2;

/**
 * Draws a figure as a front end does that has only its traces and layout, and tells which of its texts lie
 * over each other or leave the figure.
 *
 * @param narrow a size for a caption beside the figure, whose title is then left out; default title and
 * size of the layout.
 */
export async function textFaults(
  { data, layout: whole }: Pick<DrawableFigure, "data" | "layout">,
  narrow?: { readonly width: number; readonly height: number },
): Promise<string[]> {
  const layout = narrow ? { ...withoutTitle(whole), ...narrow } : whole;
  const { document, plotly } = await plotlyWindow(isBasic(data) ? "basic" : "whole");
  const target = document.createElement("div");
  document.body.append(target);
  try {
    const drawn = structuredClone(layout) as { width: number; height: number; font?: object };
    const graph = await plotly.newPlot(
      target,
      structuredClone(data) as object[],
      { ...drawn, font: { size: 13, ...drawn.font }, autosize: false },
      { staticPlot: true },
    );
    const svg = graph._fullLayout._paper.node();
    const texts = [
      ...svg.querySelectorAll("text"),
      ...(svg.parentElement?.querySelectorAll("text") ?? []),
    ].filter((each, index, all) => all.indexOf(each) === index);
    const boxes = texts.flatMap((element): Drawn[] => {
      const text = element.textContent.trim();
      const box = svgPageBox(element as DrawnElement);
      return text === "" || box.width === 0 || isSlanted(element) ? [] : [{ text, box }];
    });
    const over = boxes.flatMap((one, index) =>
      boxes
        .slice(index + 1)
        .filter((other) => overlap(one.box, other.box))
        .map((other) => `“${one.text}” lies over “${other.text}”`),
    );
    const out = boxes
      .filter(
        ({ box }) =>
          box.x < -TOUCH_PX ||
          box.y < -TOUCH_PX ||
          box.x + box.width > drawn.width + TOUCH_PX ||
          box.y + box.height > drawn.height + TOUCH_PX,
      )
      .map(({ text }) => `“${text}” leaves the figure`);
    return [...over, ...out];
  } finally {
    plotly.purge(target);
    target.remove();
  }
}

function overlap(a: SvgBox, b: SvgBox): boolean {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const along = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return across > TOUCH_PX && along > TOUCH_PX;
}

/** An upright box about slanted letters holds much that is not theirs. */
function isSlanted(element: DrawnElement): boolean {
  for (let at: DrawnElement | null = element; at !== null; at = at.parentElement) {
    const turn = /rotate\((-?[\d.]+)/.exec(at.getAttribute("transform") ?? "");
    if (turn !== null && Number(turn[1]) % 90 !== 0) return true;
  }
  return false;
}
