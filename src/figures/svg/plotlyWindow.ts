import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
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
  readonly _fullLayout: { readonly _paper: { node(): SVGSVGElement } };
}

/** A jsdom window in which plotly is loaded. */
interface PlotlyWindow {
  readonly document: Document;
  readonly plotly: PlotlyModule;
  /** Restarts the window's random numbers, so that a figure does not depend on earlier ones. */
  restartRandom(): void;
  serialize(node: unknown): string;
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

async function load(part: PlotlyPart): Promise<PlotlyWindow> {
  const require = createRequire(import.meta.url);
  const [{ JSDOM }, source] = await Promise.all([
    import("jsdom"),
    readFile(require.resolve(FILES[part]), "utf8"),
  ]);
  // `outside-only`: scripts inside the document never run, only what we evaluate here; and no
  // resource loader is set, so the window can fetch nothing
  const { window } = new JSDOM("<!doctype html><body></body>", { runScripts: "outside-only" });
  let random = minimalStandard();
  const shims = window as unknown as {
    Math: { random: () => number };
    URL: { createObjectURL: () => string };
    HTMLCanvasElement: { prototype: object };
    SVGElement: { prototype: object };
    Plotly: PlotlyModule;
    XMLSerializer: new () => { serializeToString(node: unknown): string };
  };
  shims.Math.random = () => random();
  shims.URL.createObjectURL = () => "";
  // the map code inside plotly asks for these while loading, though no figure here is a map
  Object.assign(window, { TextDecoder, TextEncoder });
  Object.assign(shims.HTMLCanvasElement.prototype, { getContext: () => null });
  Object.assign(shims.SVGElement.prototype, {
    getBBox(this: SVGElement) {
      return domRect(svgElementBox(this));
    },
    getBoundingClientRect(this: SVGElement) {
      return domRect(svgPageBox(this));
    },
    getComputedTextLength(this: SVGElement) {
      return svgElementBox(this).width;
    },
    getTotalLength(this: SVGElement) {
      return polylineLength(svgPathPoints(this.getAttribute("d") ?? ""));
    },
    getPointAtLength(this: SVGElement, distance: number) {
      return pointAlong(svgPathPoints(this.getAttribute("d") ?? ""), distance);
    },
  });
  window.eval(source);
  const serializer = new shims.XMLSerializer();
  return {
    document: window.document,
    plotly: shims.Plotly,
    restartRandom: () => {
      random = minimalStandard();
    },
    serialize: (node) => serializer.serializeToString(node),
  };
}

const loading: { [part in PlotlyPart]?: Promise<PlotlyWindow> } = {};

/**
 * Loads jsdom and plotly once a process and answers, from real font metrics, the questions about text
 * boxes that plotly otherwise puts to a browser.
 */
export function plotlyWindow(part: PlotlyPart): Promise<PlotlyWindow> {
  loading[part] ??= load(part);
  return loading[part];
}
