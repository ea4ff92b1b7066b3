import { formatFixed } from "../quantities/formatNumber.js";
import { phrase, say, sayOf } from "../words/say.js";
import { soilName } from "../words/soilName.js";
export type UsdaTexture =
  | "sand"
  | "loamy sand"
  | "sandy loam"
  | "loam"
  | "silt loam"
  | "silt"
  | "sandy clay loam"
  | "clay loam"
  | "silty clay loam"
  | "sandy clay"
  | "silty clay"
  | "clay";

export interface UsdaParts {
  /** 2 to 0.05 mm. */
  readonly sandPct: number;
  /** 0.05 to 0.002 mm. */
  readonly siltPct: number;
  /** Under 0.002 mm. */
  readonly clayPct: number;
  /** Percent of the whole coarser than 2 mm; default 0. The three others are of the part under 2 mm. */
  readonly gravelPct?: number;
}

export interface UsdaClass {
  readonly texture: UsdaTexture;
  /** With `gravelly` in front from 15 % gravel, `very` from 35, `extremely` from 60 (USDA by volume, here by mass, from memory). */
  readonly name: string;
  readonly path: readonly string[];
}

/** Tried in this order; the last rule takes what is left. */
const RULES: readonly (readonly [UsdaTexture, string, (p: UsdaParts) => boolean])[] = [
  ["sand", phrase`silt + 1.5 clay below 15`, (p) => p.siltPct + 1.5 * p.clayPct < 15],
  ["loamy sand", "silt + 2 clay below 30", (p) => p.siltPct + 2 * p.clayPct < 30],
  ["silt", phrase`silt 80 or more, clay below 12`, (p) => p.siltPct >= 80 && p.clayPct < 12],
  ["silt loam", phrase`silt 50 or more, clay below 27`, (p) => p.siltPct >= 50 && p.clayPct < 27],
  [
    "sandy loam",
    phrase`clay below 7, or clay below 20 and sand above 52`,
    (p) => p.clayPct < 7 || (p.clayPct < 20 && p.sandPct > 52),
  ],
  [
    "loam",
    phrase`clay below 27, silt 28 or more, sand up to 52`,
    (p) => p.clayPct < 27 && p.siltPct >= 28 && p.sandPct <= 52,
  ],
  [
    "sandy clay loam",
    phrase`clay 20 to 35, silt below 28, sand above 45`,
    (p) => p.clayPct >= 20 && p.clayPct < 35 && p.siltPct < 28 && p.sandPct > 45,
  ],
  ["sandy clay", phrase`clay 35 or more, sand above 45`, (p) => p.clayPct >= 35 && p.sandPct > 45],
  [
    "silty clay loam",
    phrase`clay 27 to 40, sand up to 20`,
    (p) => p.clayPct >= 27 && p.clayPct < 40 && p.sandPct <= 20,
  ],
  ["clay loam", phrase`clay 27 to 40, sand 20 to 45`, (p) => p.clayPct >= 27 && p.clayPct < 40],
  [
    "silty clay",
    phrase`clay 40 or more, silt 40 or more`,
    (p) => p.clayPct >= 40 && p.siltPct >= 40,
  ],
  ["clay", phrase`clay 40 or more, silt below 40, sand up to 45`, () => true],
];

/**
 * Texture class of the USDA triangle.
 *
 * Source: USDA class rules; clay, clay loam, loam, loamy sand and sand read (bg.termwiki.com), the
 * others from memory.
 *
 * @throws RangeError where a part is not 0 to 100 or the three do not add up to 100 (within 0.5).
 *
 * @example
 * usdaTexture({ sandPct: 30, siltPct: 40, clayPct: 30 }).texture // => "clay loam"
 */
export function usdaTexture(parts: UsdaParts): UsdaClass {
  const { gravelPct = 0 } = parts;
  const given = { sandPct: parts.sandPct, siltPct: parts.siltPct, clayPct: parts.clayPct };
  for (const [name, value] of Object.entries({ ...given, gravelPct })) {
    if (!(value >= 0 && value <= 100)) {
      throw new RangeError(`invalid \`${name}\`: ${value}; expected 0 to 100`);
    }
  }
  const sum = given.sandPct + given.siltPct + given.clayPct;
  if (Math.abs(sum - 100) > 0.5) {
    throw new RangeError(`invalid sum of sand, silt and clay: ${sum}; expected 100`);
  }
  // The rules tile the triangle only where the parts add up exactly.
  const [sandPct, siltPct, clayPct] = [given.sandPct, given.siltPct, given.clayPct].map(
    (part) => (100 * part) / sum,
  );
  const [texture, rule] =
    RULES.find(([, , fits]) => fits({ sandPct, siltPct, clayPct })) ?? RULES[RULES.length - 1];
  const gravelly =
    gravelPct >= 60
      ? "extremely gravelly"
      : gravelPct >= 35
        ? "very gravelly"
        : gravelPct >= 15
          ? "gravelly"
          : undefined;
  return {
    texture,
    name: gravelly ? `${gravelly} ${texture}` : texture,
    path: [
      say`Of the part under 2 mm: ${formatFixed(sandPct, 1)} % sand, ${formatFixed(siltPct, 1)} % silt, ${formatFixed(clayPct, 1)} % clay.`,
      say`First rule that fits: ${sayOf(rule)}: ${soilName(texture)}.`,
      ...(gravelly
        ? [
            say`${formatFixed(gravelPct, 1)} % of the whole is coarser than 2 mm: ${soilName(gravelly)}.`,
          ]
        : []),
    ],
  };
}
