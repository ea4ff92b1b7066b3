import { probabilityPercent } from "../guidance/probability.js";
import { formatFixed } from "../quantities/format.js";
import {
  USDA_POLYGONS,
  type UsdaParts,
  type UsdaTexture,
  usdaTexture,
} from "../soil/classification/usdaTexture.js";
import { joinTexts, say, soilNamed, type Text } from "../words/message.js";
import { type Figure, figureOf } from "./figure.js";
import { baseLayout, PALETTE, QUIET, seriesStyle } from "./style.js";

export interface TextureSample {
  readonly name: Text;
  readonly parts: UsdaParts;
  /** Parts as they could have come out, drawn as a cloud behind the sample. */
  readonly resampled?: readonly UsdaParts[];
}

const HIDDEN = {
  showgrid: false,
  showline: false,
  zeroline: false,
  ticks: "",
  showticklabels: false,
};

/**
 * The texture triangle: sand, silt and clay of the part under 2 mm, with the USDA classes (rules read
 * in part; corners from memory).
 *
 * @throws RangeError without a sample, or where the parts of one are none.
 *
 * @example
 * render(textureTriangle("Texture", [{ name: "Site soil", parts: { sandPct: 30, siltPct: 40, clayPct: 30 } }]).altText) // => "Texture. Triangle of sand, silt and clay under 2 mm. Site soil: sand 30.0 %, silt 40.0 %, clay 30.0 %: clay loam."
 */
export function textureTriangle(title: Text, samples: readonly TextureSample[]): Figure {
  if (samples.length === 0) throw new RangeError("invalid `samples`: none; expected at least one");
  const borders = Object.values(USDA_POLYGONS).map((corners) => {
    const at = [...corners, corners[0]].map(([clay, silt]) => texturePlace(clay, silt));
    return {
      type: "scatter",
      mode: "lines",
      x: at.map(({ x }) => x),
      y: at.map(({ y }) => y),
      line: { color: QUIET.border, width: 1 },
      showlegend: false,
      hoverinfo: "skip",
    };
  });
  return figureOf(
    title,
    say`${title}. Triangle of sand, silt and clay under 2 mm. ${joinTexts(samples.map(describe), " ")}`,
    [...borders, ...samples.flatMap(sampleTraces)],
    baseLayout(
      { title: "", range: [-14, 114], ...HIDDEN },
      { title: "", range: [-12.5, 90], scaleanchor: "x", ...HIDDEN },
      {
        annotations: [...textureNames(), ...ticks()],
        margin: { l: 8, r: 8, t: 8, b: 8 },
      },
    ),
  );
}

function describe({ name, parts, resampled = [] }: TextureSample): Text {
  const found = say`${name}: sand ${formatFixed(parts.sandPct, 1)} %, silt ${formatFixed(parts.siltPct, 1)} %, clay ${formatFixed(parts.clayPct, 1)} %: ${soilNamed(usdaTexture(parts).name)}.`;
  if (resampled.length === 0) return found;
  const shares = textureShares(resampled).map(
    ({ texture, share }) => say`${soilNamed(texture)} ${probabilityPercent(share)} %`,
  );
  return say`${found} Within its reading errors: ${joinTexts(shares)}.`;
}

function sampleTraces({ name, parts, resampled = [] }: TextureSample, index: number): object[] {
  const { color, symbol } = seriesStyle(index);
  const cloud = resampled.map(({ clayPct, siltPct }) => texturePlace(clayPct, siltPct));
  const { x, y } = texturePlace(parts.clayPct, parts.siltPct);
  return [
    ...(cloud.length
      ? [
          {
            type: "scatter",
            mode: "markers",
            name: say`${name}, within its reading errors`,
            x: cloud.map((each) => each.x),
            y: cloud.map((each) => each.y),
            showlegend: false,
            marker: { color, symbol: "circle", size: 3, opacity: 0.35 },
          },
        ]
      : []),
    {
      type: "scatter",
      mode: "markers",
      name: cloud.length ? say`${name}<br>(small dots: within its reading errors)` : name,
      x: [x],
      y: [y],
      marker: { color, symbol, size: 11, line: { color: "#ffffff", width: 1 } },
    },
  ];
}

function ticks(): object[] {
  const label = (text: Text, x: number, y: number, more: object = {}) => ({
    text,
    x,
    y,
    showarrow: false,
    font: { size: 11, color: PALETTE.manganese },
    ...more,
  });
  const marks = [20, 40, 60, 80].flatMap((pct) => {
    const [clay, silt, sand] = [
      texturePlace(pct, 0),
      texturePlace(100 - pct, pct),
      texturePlace(0, 100 - pct),
    ];
    return [
      label(String(pct), clay.x - 2.5, clay.y),
      label(String(pct), silt.x + 5, silt.y + 2),
      label(String(pct), sand.x, -4.4),
    ];
  });
  const title = { font: { size: 13, color: PALETTE.manganese } };
  return [
    ...marks,
    label(say`clay (%)`, 14, 46, { ...title, textangle: -60 }),
    label(say`silt (%)`, 86, 46, { ...title, textangle: 60 }),
    label(say`sand (%), growing to the left`, 50, -10.5, title),
  ];
}

const HEIGHT = Math.sqrt(3) / 2;

/** A place in the texture triangle: clay upwards, silt to the right, sand to the left. */
function texturePlace(clayPct: number, siltPct: number): { x: number; y: number } {
  return { x: siltPct + clayPct / 2, y: HEIGHT * clayPct };
}

/** Where the middle of the corners would put a name on a border: clay, silt. */
const NAME_AT: Readonly<Record<string, readonly [number, number]>> = {
  sand: [3, 3.5],
  // Off the middle, where most soils for ramming lie.
  "sandy loam": [15, 16.5],
  loam: [23.5, 36],
  "loamy sand": [4, 13.2],
  silt: [5, 87],
};

/** Long names stand on two lines, broken where each language can break them. */
const ON_TWO_LINES: { readonly [texture in UsdaTexture]?: Text } = {
  "loamy sand": say`loamy<br>sand`,
  "sandy loam": say`sandy<br>loam`,
  "silt loam": say`silt<br>loam`,
  "sandy clay loam": say`sandy<br>clay loam`,
  "clay loam": say`clay<br>loam`,
  "silty clay loam": say`silty<br>clay loam`,
  "sandy clay": say`sandy<br>clay`,
  "silty clay": say`silty<br>clay`,
};

/** At the middle of a class's corners. */
function textureNames(): object[] {
  return (Object.keys(USDA_POLYGONS) as UsdaTexture[]).map((texture) => {
    const corners = USDA_POLYGONS[texture];
    const middle = (part: 0 | 1) =>
      corners.reduce((sum, corner) => sum + corner[part], 0) / corners.length;
    return {
      text: ON_TWO_LINES[texture] ?? soilNamed(texture),
      ...texturePlace(...(NAME_AT[texture] ?? ([middle(0), middle(1)] as const))),
      showarrow: false,
      font: { size: 10, color: QUIET.letters },
    };
  });
}

/** How many of the drawn parts fall into each texture class, most first; the shares add up to 1. */
function textureShares(
  resampled: readonly UsdaParts[],
): { readonly texture: UsdaTexture; readonly share: number }[] {
  const counts = new Map<UsdaTexture, number>();
  for (const parts of resampled) {
    const { texture } = usdaTexture(parts);
    counts.set(texture, (counts.get(texture) ?? 0) + 1);
  }
  return [...counts]
    .map(([texture, count]) => ({ texture, share: count / resampled.length }))
    .sort((a, b) => b.share - a.share || (a.texture < b.texture ? -1 : 1));
}
