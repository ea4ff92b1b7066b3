import type { Photograph } from "../study/photographs.js";
import { joinTexts, say, type Text } from "../words/message.js";
import { type Figure, figureOf } from "./figure.js";
import { widestLength } from "./style.js";
import { figurePng } from "./svg/figurePng.js";

/** Dots across a photograph: enough for a third of a page at about 150 an inch; common practice, no source. */
const WIDTH_PX = 420;
/** Photographs that stand side by side, and the letters of a line below one that there is room for. */
const [ACROSS, LETTERS] = [3, 36];
/** Of a photograph's place, with room below for its name and who noted it. */
const [PLACE_PX, NAME_PX] = [244, 40];

/**
 * Photographs of trial blocks side by side, shrunk for print, each with the name of its blend and block, and
 * who noted it, and when.
 * Their colours hold only among pictures of one light, one camera setting and one grey card.
 *
 * @throws RangeError without photographs.
 */
export function photographsFigure(title: Text, photographs: readonly Photograph[]): Figure {
  if (photographs.length === 0) throw new RangeError("invalid `photographs`: []; expected some");
  const named = photographs.map(({ id, trial }) => say`${trial}, ${id}`);
  const noted = photographs.map(notedBy);
  const long = [...named, ...noted].some((line) => widestLength(line) > LETTERS);
  const across = Math.min(long ? ACROSS - 1 : ACROSS, photographs.length);
  const rows = Math.ceil(photographs.length / across);
  const height = rows * PLACE_PX;
  const place = (index: number) => ({
    x: (index % across) / across,
    top: 1 - Math.floor(index / across) / rows,
  });
  return figureOf(
    title,
    say`${title}. ${joinTexts(
      named.map((name, index) => say`${name}, ${noted[index]}`),
      "; ",
    )}.`,
    [{ type: "scatter", x: [0], y: [0], mode: "markers", opacity: 0, showlegend: false }],
    {
      xaxis: { visible: false, fixedrange: true },
      yaxis: { visible: false, fixedrange: true },
      margin: { l: 10, r: 10, t: 10, b: 10 },
      plot_bgcolor: "#ffffff",
      images: photographs.map((photograph, index) => ({
        source: `data:image/png;base64,${base64(shrunkPhotograph(photograph, WIDTH_PX))}`,
        xref: "paper",
        yref: "paper",
        x: place(index).x,
        y: place(index).top,
        sizex: 0.96 / across,
        sizey: (PLACE_PX - NAME_PX - 6) / height,
        xanchor: "left",
        yanchor: "top",
        layer: "above",
      })),
      annotations: named.map((name, index) => ({
        text: joinTexts([name, noted[index]], "<br>"),
        align: "left",
        xref: "paper",
        yref: "paper",
        x: place(index).x,
        y: place(index).top - (PLACE_PX - NAME_PX) / height,
        xanchor: "left",
        yanchor: "top",
        showarrow: false,
      })),
    },
    height + 60,
  );
}

function notedBy({ seenBy, seenOn }: Photograph): Text {
  if (seenBy !== undefined) {
    return seenOn === undefined ? say`noted by ${seenBy}` : say`noted by ${seenBy}, ${seenOn}`;
  }
  return seenOn === undefined ? say`observer and date not stated` : say`noted on ${seenOn}`;
}

function base64(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString("base64");
}

/**
 * A photograph as PNG, painted anew upright and small; what the camera noted beside the picture, such as the
 * place, is left behind.
 *
 * @param maxPx its width at most.
 */
export function shrunkPhotograph(photograph: Photograph, maxPx: number): Uint8Array {
  const { type, bytes, widthPx, heightPx, turnDegrees } = photograph;
  const source = `data:image/${type};base64,${base64(bytes)}`;
  const lies = turnDegrees === 90 || turnDegrees === 270;
  const [across, high] = lies ? [heightPx, widthPx] : [widthPx, heightPx];
  const scale = Math.min(1, maxPx / across);
  const [width, height] = [across, high].map((side) => Math.max(1, Math.round(side * scale)));
  const [shownWidth, shownHeight] = lies ? [height, width] : [width, height];
  const middle = `translate(${width / 2} ${height / 2}) rotate(${turnDegrees}) translate(${-shownWidth / 2} ${-shownHeight / 2})`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="${width}" height="${height}"><image width="${shownWidth}" height="${shownHeight}" preserveAspectRatio="none" transform="${middle}" xlink:href="${source}"/></svg>`;
  return figurePng(svg, 1);
}
