import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { compileFunction } from "node:vm";
import { DrawnDocument, DrawnElement, DrawnStyle, serializedXml } from "./drawingDom.js";
import {
  pointAlong,
  polylineLength,
  type SvgBox,
  svgElementBox,
  svgPageBox,
  svgPathPoints,
} from "./geometry.js";

/** The small part draws scatter, bar and pie in a third of the loading time; both are of one version. */
type PlotlyPart = "basic" | "whole";

const FILES: Readonly<Record<PlotlyPart, string>> = {
  basic: "plotly.js-basic-dist-min/plotly-basic.min.js",
  whole: "plotly.js-dist/plotly.js",
};

/** The parts of plotly that drawing to SVG needs. */
interface PlotlyModule {
  newPlot(target: unknown, data: object[], layout: object, config: object): Promise<PlotlyGraph>;
  purge(target: unknown): void;
  readonly Snapshot: { toSVG(graph: PlotlyGraph, format: "svg"): string };
}

/** A drawn graph; `_paper` is the selection that holds its main SVG element. */
interface PlotlyGraph {
  readonly _fullLayout: { readonly _paper: { node(): DrawnElement } };
}

/** A window in which plotly is loaded. */
interface PlotlyWindow {
  readonly document: DrawnDocument;
  readonly plotly: PlotlyModule;
  /** Restarts the window's random numbers, so that a figure does not depend on earlier ones. */
  restartRandom(): void;
}

/** Park and Miller's minimal standard generator (Commun. ACM 31, 1988): for ids, not statistics. */
function minimalStandard(): () => number {
  let state = 20_170_411;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

function domRect({ x, y, width, height }: SvgBox): object {
  return { x, y, width, height, left: x, top: y, right: x + width, bottom: y + height };
}

/** What plotly asks of a browser's window besides the document; whatever else it finds missing. */
function windowOf(document: DrawnDocument): Record<string, unknown> {
  const nothing = () => {};
  const window: Record<string, unknown> = {
    document,
    navigator: { userAgent: "", maxTouchPoints: 0 },
    location: { href: "about:blank", protocol: "about:", origin: "null" },
    Element: DrawnElement,
    HTMLElement: DrawnElement,
    SVGElement: DrawnElement,
    CSSStyleDeclaration: DrawnStyle,
    URL: { createObjectURL: () => "", revokeObjectURL: nothing },
    XMLSerializer: class {
      serializeToString = serializedXml;
    },
    DOMParser: class {
      parseFromString(): never {
        throw new Error(
          "plotly reads markup only for its bar of buttons, which no still figure has",
        );
      }
    },
    getComputedStyle: (element: DrawnElement) => element.style,
    matchMedia: () => ({ matches: false }),
    addEventListener: nothing,
    removeEventListener: nothing,
    setTimeout,
    clearTimeout,
  };
  document.defaultView = window;
  return Object.assign(window, { window, self: window });
}

Object.assign(DrawnElement.prototype, {
  getBBox(this: DrawnElement) {
    return domRect(svgElementBox(this));
  },
  getBoundingClientRect(this: DrawnElement) {
    return domRect(svgPageBox(this));
  },
  getComputedTextLength(this: DrawnElement) {
    return svgElementBox(this).width;
  },
  getTotalLength(this: DrawnElement) {
    return polylineLength(svgPathPoints(this.getAttribute("d") ?? ""));
  },
  getPointAtLength(this: DrawnElement, distance: number) {
    return pointAlong(svgPathPoints(this.getAttribute("d") ?? ""), distance);
  },
});

async function load(part: PlotlyPart): Promise<PlotlyWindow> {
  const require = createRequire(import.meta.url);
  const path = require.resolve(FILES[part]);
  const source = await readFile(path, "utf8");
  const document = new DrawnDocument();
  const window = windowOf(document);
  let random = minimalStandard();
  const math = Object.assign(Object.create(Math), { random: () => random() });
  // plotly sees this window in the place of the program's own globals
  const scope = { ...window, Math: math, module: undefined, exports: undefined, define: undefined };
  compileFunction(source, Object.keys(scope), { filename: path }).apply(
    window,
    Object.values(scope),
  );
  const plotly = window.Plotly as PlotlyModule;
  return {
    document,
    plotly,
    restartRandom: () => {
      random = minimalStandard();
    },
  };
}

const loading: { [part in PlotlyPart]?: Promise<PlotlyWindow> } = {};

/**
 * Loads plotly once a process and answers, from real font metrics, the questions about text
 * boxes that plotly otherwise puts to a browser.
 */
export function plotlyWindow(part: PlotlyPart): Promise<PlotlyWindow> {
  loading[part] ??= load(part);
  return loading[part];
}
