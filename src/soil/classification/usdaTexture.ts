import { type GradingCurve, passingAtSize, percentOf } from "../../grading/curve.js";
import { fractions } from "../../grading/fractions.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { formatFixed } from "../../quantities/format.js";
import { say, soilNamed, type Text } from "../../words/message.js";

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
  readonly path: readonly Text[];
}

/** Tried in this order; the last rule takes what is left. */
const RULES: readonly (readonly [UsdaTexture, Text, (p: UsdaParts) => boolean])[] = [
  ["sand", say`silt + 1.5 clay below 15`, (p) => p.siltPct + 1.5 * p.clayPct < 15],
  ["loamy sand", say`silt + 2 clay below 30`, (p) => p.siltPct + 2 * p.clayPct < 30],
  ["silt", say`silt 80 or more, clay below 12`, (p) => p.siltPct >= 80 && p.clayPct < 12],
  ["silt loam", say`silt 50 or more, clay below 27`, (p) => p.siltPct >= 50 && p.clayPct < 27],
  [
    "sandy loam",
    say`clay below 7, or clay below 20 and sand above 52`,
    (p) => p.clayPct < 7 || (p.clayPct < 20 && p.sandPct > 52),
  ],
  [
    "loam",
    say`clay below 27, silt 28 or more, sand up to 52`,
    (p) => p.clayPct < 27 && p.siltPct >= 28 && p.sandPct <= 52,
  ],
  [
    "sandy clay loam",
    say`clay 20 to 35, silt below 28, sand above 45`,
    (p) => p.clayPct >= 20 && p.clayPct < 35 && p.siltPct < 28 && p.sandPct > 45,
  ],
  ["sandy clay", say`clay 35 or more, sand above 45`, (p) => p.clayPct >= 35 && p.sandPct > 45],
  [
    "silty clay loam",
    say`clay 27 to 40, sand up to 20`,
    (p) => p.clayPct >= 27 && p.clayPct < 40 && p.sandPct <= 20,
  ],
  ["clay loam", say`clay 27 to 40, sand 20 to 45`, (p) => p.clayPct >= 27 && p.clayPct < 40],
  ["silty clay", say`clay 40 or more, silt 40 or more`, (p) => p.clayPct >= 40 && p.siltPct >= 40],
  ["clay", say`clay 40 or more, silt below 40, sand up to 45`, () => true],
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
    checkThat(value >= 0 && value <= 100, { [name]: value }, "0 to 100");
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
  const path = [
    say`Of the part under 2 mm: ${formatFixed(sandPct, 1)} % sand, ${formatFixed(siltPct, 1)} % silt, ${formatFixed(clayPct, 1)} % clay.`,
    say`First rule that fits: ${rule}: ${soilNamed(texture)}.`,
  ];
  const gravelly = GRAVELLY.find(({ fromPct }) => gravelPct >= fromPct)?.word;
  if (!gravelly) return { texture, name: texture, path };
  path.push(
    say`${formatFixed(gravelPct, 1)} % of the whole is coarser than 2 mm: ${soilNamed(gravelly)}.`,
  );
  return { texture, name: `${gravelly} ${texture}`, path };
}

const GRAVELLY = [
  { fromPct: 60, word: "extremely gravelly" },
  { fromPct: 35, word: "very gravelly" },
  { fromPct: 15, word: "gravelly" },
] as const;

/**
 * Sand, silt and clay of the part under 2 mm, read off a curve with the gravel left out.
 *
 * Formula: part' = part / (passing at 2 mm / 100); the gravel stays as a word in front of the class
 * (gravel correction: San Joaquin County 600101 p. 251, read). Sand 2 to 0.05 mm, clay under 0.002 mm.
 *
 * @returns `undefined` where the curve does not reach 0.002 or 2 mm, or nothing passes 2 mm.
 *
 * @example
 * const curve = { points: [{ sizeMm: 0.002, passingPct: 16, origin: "sedimentation" }, { sizeMm: 0.05, passingPct: 48, origin: "sedimentation" }, { sizeMm: 2, passingPct: 80, origin: "sieve" }, { sizeMm: 20, passingPct: 100, origin: "sieve" }] };
 * usdaFromCurve(curve) // => { sandPct: 40, siltPct: 40, clayPct: 20, gravelPct: 20 }
 */
export function usdaFromCurve(curve: GradingCurve): UsdaParts | undefined {
  const { clayPct, siltPct, sandPct } = fractions(curve, "usda");
  const fine = passingAtSize(curve, 2);
  if (clayPct === undefined || siltPct === undefined || sandPct === undefined || !fine) {
    return undefined;
  }
  const part = (pct: number) => percentOf(fine, pct);
  return {
    sandPct: part(sandPct),
    siltPct: part(siltPct),
    clayPct: part(clayPct),
    gravelPct: 100 - fine,
  };
}

/** A corner of a texture class: clay, silt and sand in percent. */
export type TextureCorner = readonly [number, number, number];

/**
 * Corners of the USDA texture classes, for drawing; classifying goes by the rules of `usdaTexture`.
 *
 * From memory; together they cover the triangle without gap or overlap and agree with the rules (tested).
 *
 * @example
 * USDA_POLYGONS["sandy clay"] // => [[55, 0, 45], [35, 0, 65], [35, 20, 45]]
 */
export const USDA_POLYGONS: Readonly<Record<UsdaTexture, readonly TextureCorner[]>> = {
  clay: [
    [100, 0, 0],
    [55, 0, 45],
    [40, 15, 45],
    [40, 40, 20],
    [60, 40, 0],
  ],
  "silty clay": [
    [60, 40, 0],
    [40, 40, 20],
    [40, 60, 0],
  ],
  "sandy clay": [
    [55, 0, 45],
    [35, 0, 65],
    [35, 20, 45],
  ],
  "clay loam": [
    [40, 15, 45],
    [40, 40, 20],
    [27, 53, 20],
    [27, 28, 45],
  ],
  "silty clay loam": [
    [40, 60, 0],
    [40, 40, 20],
    [27, 53, 20],
    [27, 73, 0],
  ],
  "sandy clay loam": [
    [35, 0, 65],
    [35, 20, 45],
    [27, 28, 45],
    [20, 28, 52],
    [20, 0, 80],
  ],
  loam: [
    [27, 28, 45],
    [27, 50, 23],
    [7, 50, 43],
    [7, 41, 52],
    [20, 28, 52],
  ],
  "silt loam": [
    [27, 50, 23],
    [27, 73, 0],
    [12, 88, 0],
    [12, 80, 8],
    [0, 80, 20],
    [0, 50, 50],
  ],
  silt: [
    [12, 88, 0],
    [12, 80, 8],
    [0, 80, 20],
    [0, 100, 0],
  ],
  "sandy loam": [
    [20, 0, 80],
    [20, 28, 52],
    [7, 41, 52],
    [7, 50, 43],
    [0, 50, 50],
    [0, 30, 70],
    [15, 0, 85],
  ],
  "loamy sand": [
    [15, 0, 85],
    [0, 30, 70],
    [0, 15, 85],
    [10, 0, 90],
  ],
  sand: [
    [10, 0, 90],
    [0, 15, 85],
    [0, 0, 100],
  ],
};
