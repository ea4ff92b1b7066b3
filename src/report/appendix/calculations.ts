import { mean, sum, sumNthPowerDeviations } from "simple-statistics";
import type { TableBlock } from "../../blocks/block.js";
import { passingAtSize } from "../../grading/curve.js";
import { GRAVITY } from "../../grading/sedimentation/settling.js";
import type { SieveAnalysisRow } from "../../grading/sieveAnalysis.js";
import { normalQuantile, tQuantile } from "../../numerics/distributions.js";
import { formatFixed, formatPlain, formatQuantity } from "../../quantities/format.js";
import { boundOffset } from "../../strength/regression/bounds.js";
import { type FittedStrength, strengthAt } from "../../strength/regression/curve.js";
import { STRENGTH_MODELS } from "../../strength/regression/model.js";
import type { MaterialResult, StudyResult } from "../../study/studyResult.js";
import { joinTexts, say, type Text } from "../../words/message.js";
import { sheetRow } from "./parts.js";

/** One line of a worked calculation: a number that was read or given, or one that follows from those above. */
export interface CalculationLine {
  readonly symbol: string;
  /** What it is, or the formula. */
  readonly words: Text;
  /** The formula with its numbers; absent for a number that was given. */
  readonly filled?: Text;
  readonly value: number;
  /** As printed. */
  readonly shown: Text;
  /** Where the number stands in this report. */
  readonly to?: string;
}

/** A calculation that a reviewer can repeat with a pocket calculator. */
export interface WorkedCalculation {
  /** Other parts cite it as `calculation-<kind>`. */
  readonly kind: "sieve" | "subsample" | "hydrometer" | "blend" | "bound" | "batch" | "water";
  readonly caption: Text;
  readonly lines: readonly CalculationLine[];
}

/**
 * One calculation of each kind that the study holds, made from its numbers: a sieve, a sieve of a
 * subsample, a hydrometer reading, the shares at one size, the bound at the chosen cement, a batch, its
 * water. The last line of each is a number of the result.
 */
export function workedCalculations(result: StudyResult): WorkedCalculation[] {
  const soil = result.materials.find(({ role }) => role === "soil") ?? result.materials[0];
  const settled = soil?.sedimentation
    ? soil
    : result.materials.find(({ sedimentation }) => sedimentation);
  return [
    ...(soil ? sieveCalculations(soil, result) : []),
    ...(settled ? hydrometerCalculation(settled, result) : []),
    ...blendCalculation(result),
    ...boundCalculation(result),
    ...batchCalculation(result),
    ...waterCalculation(result),
  ];
}

/** The calculations as tables of an annex. */
export function calculationTables(result: StudyResult): TableBlock[] {
  return workedCalculations(result).map(({ kind, caption, lines }) => ({
    kind: "table",
    key: `calculation-${kind}`,
    caption,
    columns: [
      { header: say`Symbol` },
      { header: say`Quantity or formula` },
      { header: say`With the numbers` },
      { header: say`Value`, align: "right" },
    ],
    rows: lines.map(({ symbol, words, filled, shown }) => [symbol, words, filled ?? "", shown]),
    links: lines.flatMap(({ to }, row) => (to === undefined ? [] : [{ row, column: 3, to }])),
  }));
}

const exact = (value: number) => formatPlain(value, 6);

/** Signs and numbers of a formula: the same in every language but for the decimal sign. */
function formula(strings: TemplateStringsArray, ...values: readonly (Text | number)[]): Text {
  const said = values.map((value) => (typeof value === "number" ? exact(value) : value));
  return joinTexts(
    strings.flatMap((part, at) => (at < said.length ? [part, said[at]] : [part])),
    "",
  );
}

/** A number with what is printed of it. */
type Printed = Pick<CalculationLine, "value" | "shown">;

function printed(value: number, number: Text, unit: string): Printed {
  return { value, shown: unit === "" ? number : formula`${number} ${unit}` };
}

function rounded(value: number, decimals: number, unit: string): Printed {
  return printed(value, formatFixed(value, decimals), unit);
}

/** A mass that was worked out in kilograms, with the study's unit behind it. */
function mass(kilograms: number, { config }: StudyResult): Printed {
  const { value, shown } = rounded(kilograms, 2, "kg");
  if (config.units === "SI") return { value, shown };
  return {
    value,
    shown: formula`${shown} (${formatQuantity(1000 * kilograms, "mass", config.units)})`,
  };
}

function given(
  symbol: string,
  words: Text,
  value: number,
  unit: string,
  to?: string,
): CalculationLine {
  return { symbol, words, ...printed(value, exact(value), unit), to };
}

/** A number that follows from those above by a rule, such as `A = T − E`, which begins with its symbol. */
function follows(rule: string, filled: Text, number: Printed, to?: string): CalculationLine {
  return { symbol: rule.split(" = ")[0], words: rule, filled, ...number, to };
}

/** A sieve by its opening, or by the name that the sheet gives it, such as No. 40. */
function sieveName({ label, sizeMm }: SieveAnalysisRow): Text {
  return Number(label) === sizeMm ? say`the ${sizeMm} mm sieve` : say`sieve ${label}`;
}

function sieveCalculations(
  { id, name, sieve }: MaterialResult,
  { config }: StudyResult,
): WorkedCalculation[] {
  const source = config.materials.find((one) => one.id === id)?.sieve;
  return [0, 1].flatMap((portion): WorkedCalculation[] => {
    const rows = sieve.rows.filter((row) => row.portion === portion);
    const set = sieve.sets.find((one) => one.portion === portion);
    // Reported percentages leave nothing to work out.
    if (rows.length === 0 || !set || sieve.massesUnknown) return [];
    const { dryMassG } = set;
    const upTo = rows.slice(0, Math.ceil(rows.length / 2));
    const last = upTo[upTo.length - 1];
    const masses = upTo.map(({ retainedG }) => retainedG);
    const total = sum(masses);
    const retained = [
      ...upTo.map((row, at) => {
        const words = say`retained on ${sieveName(row)}`;
        return given(`R${at + 1}`, words, row.retainedG, "g", sheetRow(source, row.row));
      }),
      {
        ...follows("ΣR", joinTexts(masses.map(exact), " + "), rounded(total, 2, "g")),
        words: say`sum of the masses retained`,
      },
    ];
    const to = `sieving-${id}`;
    const passing = rounded(last.passingPct, 1, "%");
    if (portion === 0) {
      return [
        {
          kind: "sieve",
          caption: say`Worked calculation: passing ${sieveName(last)}, of ${name}`,
          lines: [
            given("M", say`dry mass before washing`, dryMassG, "g"),
            ...retained,
            follows(
              "P = 100 (1 − ΣR / M)",
              formula`100 × (1 − ${total} / ${dryMassG})`,
              passing,
              to,
            ),
          ],
        },
      ];
    }
    const [whole] = sieve.sets;
    const washedPct = (100 * whole.washedOutG) / whole.dryMassG;
    const fromPct = sieve.rows.filter((row) => row.portion < portion).at(-1)?.passingPct ?? 100;
    return [
      {
        kind: "subsample",
        caption: say`Worked calculation: passing ${sieveName(last)}, of ${name}, sieved on a subsample`,
        lines: [
          given("m", say`dry mass of the subsample`, dryMassG, "g"),
          given("Ps", say`passing the sieve that the subsample passed`, fromPct, "%", to),
          given("W", say`washed out of the whole sample`, washedPct, "%", to),
          ...retained,
          follows(
            "P = W + (Ps − W) (1 − ΣR / m)",
            formula`${washedPct} + (${fromPct} − ${washedPct}) × (1 − ${total} / ${dryMassG})`,
            passing,
            to,
          ),
        ],
      },
    ];
  });
}

function hydrometerCalculation(
  { id, name, sedimentation }: MaterialResult,
  { config }: StudyResult,
): WorkedCalculation[] {
  const material = config.materials.find((one) => one.id === id);
  const density = material?.particleDensityKgM3;
  const row = sedimentation?.rows[Math.floor(sedimentation.rows.length / 2)];
  if (!sedimentation || !row || density === undefined) return [];
  const { hydrometer, dryMassG, passingSeparatingPct, densityFactor } = sedimentation;
  const to = `sedimentation-${id}`;
  const sheet = sheetRow(material?.hydrometer, row.row);
  const { effectiveDepthCm, viscosityMPaS, waterDensityKgM3, timeMin, temperatureC } = row;
  const { reading, control, correctedReading } = row;
  const ofMass = hydrometer === "152H";
  const k = density / (density / 1000 - 1);
  const finer = rounded(row.finerOfDispersedPct, 1, "%");
  const [factor, dispersed] = ofMass
    ? [
        given(
          "a",
          say`factor of the particle density, 1.65 ρs / (2.65 (ρs − 1)), in Mg/m³`,
          densityFactor,
          "",
        ),
        follows(
          "F = 100 Rc a / m",
          formula`100 × ${correctedReading} × ${densityFactor} / ${dryMassG}`,
          finer,
          to,
        ),
      ]
    : [
        given("k", say`factor of the particle density, 1000 ρs / (ρs − 1), in Mg/m³`, k, ""),
        follows(
          "F = 100 k Rc / m",
          formula`100 × ${k} × ${correctedReading} / ${dryMassG}`,
          finer,
          to,
        ),
      ];
  return [
    {
      kind: "hydrometer",
      caption: say`Worked calculation: hydrometer reading at ${exact(timeMin)} min of ${name}`,
      lines: [
        given("R", say`reading`, reading, "", sheet),
        given("C", say`control reading`, control, "", sheet),
        given("t", say`time`, timeMin, "min", sheet),
        given(
          "η",
          say`viscosity of water at ${formatFixed(temperatureC, 1)} °C`,
          viscosityMPaS,
          "mPa·s",
        ),
        given("ρw", say`density of water at that temperature`, waterDensityKgM3, "kg/m³"),
        given("ρs", say`particle density`, density, "kg/m³", "materials-table"),
        given("L", say`effective depth`, effectiveDepthCm, "cm", to),
        given("g", say`acceleration of gravity`, GRAVITY, "m/s²"),
        follows(
          "d = √(18 η L / ((ρs − ρw) g t))",
          formula`1000 × √(18 × ${viscosityMPaS} / 1000 × ${effectiveDepthCm} / 100 / ((${density} − ${waterDensityKgM3}) × ${GRAVITY} × 60 × ${timeMin}))`,
          rounded(row.sizeMm, 4, "mm"),
          to,
        ),
        follows(
          "Rc = R − C",
          formula`${reading} − ${control}`,
          rounded(correctedReading, ofMass ? 2 : 5, ""),
          to,
        ),
        given("m", say`dry mass dispersed`, dryMassG, "g"),
        factor,
        dispersed,
        given(
          "Ps",
          say`passing the sieve that separated the dispersed part`,
          passingSeparatingPct,
          "%",
          `sieving-${id}`,
        ),
        follows(
          "P = F Ps / 100",
          formula`${row.finerOfDispersedPct} × ${passingSeparatingPct} / 100`,
          rounded(row.passingPct, 1, "%"),
          to,
        ),
      ],
    },
  ];
}

function blendCalculation({ blend, materials }: StudyResult): WorkedCalculation[] {
  const point = blend?.points[Math.floor(blend.points.length / 2)];
  if (!blend || !point) return [];
  const used = materials.flatMap(({ id, name, curve }) => {
    const sharePct = blend.shares.find((share) => share.id === id)?.sharePct ?? 0;
    const passingPct = passingAtSize(curve, point.sizeMm) ?? 0;
    return sharePct > 0 ? [{ id, name, sharePct, passingPct }] : [];
  });
  const terms = used.map(({ sharePct, passingPct }) => formula`${sharePct} × ${passingPct} / 100`);
  return [
    {
      kind: "blend",
      caption: say`Worked calculation: the blend's passing at ${exact(point.sizeMm)} mm`,
      lines: [
        ...used.flatMap(({ id, name, sharePct, passingPct }, at) => [
          given(`x${at + 1}`, say`share of ${name}`, sharePct, "%", "shares"),
          given(`P${at + 1}`, say`passing of ${name}`, passingPct, "%", `sieving-${id}`),
        ]),
        follows(
          "P = Σ x P / 100",
          joinTexts(terms, " + "),
          rounded(point.blendPct, 1, "%"),
          "blend-fit",
        ),
      ],
    },
  ];
}

function boundCalculation({ config, strength, testing }: StudyResult): WorkedCalculation[] {
  const { requirement } = config.strength;
  const least = strength?.leastCement;
  const content = least?.batchablePct;
  const bound = least?.boundAtBatchableMpa;
  if (
    testing?.state !== "tested" ||
    !strength ||
    !requirement ||
    content == null ||
    bound == null
  ) {
    return [];
  }
  const { fit } = strength;
  const logStrength = STRENGTH_MODELS[fit.model].strengthScale === "logarithm";
  const { value: y, leverage, sd: s } = strengthAt(fit, content);
  const { k, lines } = boundFactor(fit, leverage, requirement);
  const { value, shown } = rounded(bound, 2, "MPa");
  const inUnits = formatQuantity(bound, "stress", config.units);
  const strengthShown = config.units === "SI" ? shown : formula`${shown} (${inUnits})`;
  const last = { value, shown: strengthShown };
  return [
    {
      kind: "bound",
      caption: say`Worked calculation: the lower bound of strength at ${exact(content)} % cement`,
      lines: [
        ...lineLines(fit, content, y, leverage),
        given(
          "s",
          say`residual standard deviation at that content`,
          s,
          logStrength ? "" : "MPa",
          "regression-line",
        ),
        ...lines,
        logStrength
          ? follows("f = exp(y − k s)", formula`exp(${y} − ${k} × ${s})`, last, "bands")
          : follows("f = y − k s", formula`${y} − ${k} × ${s}`, last, "bands"),
      ],
    },
  ];
}

/** The fitted value and the leverage at a content: by hand for a straight line, else as the regression gives them. */
function lineLines(
  fit: FittedStrength,
  content: number,
  value: number,
  leverage: number,
): CalculationLine[] {
  const { contentScale, strengthScale, degree } = STRENGTH_MODELS[fit.model];
  const plainLine =
    degree === 1 &&
    fit.covariates.length === 0 &&
    fit.batches.length === 0 &&
    fit.basis.variance === "even";
  const unit = strengthScale === "logarithm" ? "" : "MPa";
  const c = given("c", say`cement content`, content, "%", "least-cement");
  if (!plainLine) {
    const name =
      strengthScale === "logarithm" ? say`ln of the fitted strength` : say`fitted strength`;
    return [
      c,
      given("y", name, value, unit, "regression-line"),
      given("h", say`leverage of that content, as the regression gives it`, leverage, ""),
    ];
  }
  const ofLogarithm = contentScale === "logarithm";
  const scaled = (pct: number) => (ofLogarithm ? Math.log(pct) : pct);
  const x = scaled(content);
  const symbol = ofLogarithm ? "x" : "c";
  const all = fit.points.map(({ cementPct }) => scaled(cementPct));
  const [count, centre, squares] = [all.length, mean(all), sumNthPowerDeviations(all, 2)];
  const [a, b] = fit.coefficients.map((coefficient) => coefficient.value);
  return [
    c,
    ...(ofLogarithm ? [follows("x = ln c", formula`ln(${content})`, rounded(x, 5, ""))] : []),
    given("a", say`intercept of the line`, a, "", "regression-line"),
    given("b", say`slope of the line`, b, "", "regression-line"),
    follows(`y = a + b ${symbol}`, formula`${a} + ${b} × ${x}`, rounded(value, 4, unit), "bands"),
    given("n", say`blocks in the regression`, count, "", "blocks"),
    given("x̄", say`mean of their contents`, centre, ""),
    given("S", say`sum of the squared distances from that mean`, squares, ""),
    follows(
      `h = 1/n + (${symbol} − x̄)² / S`,
      formula`1 / ${count} + (${x} − ${centre})² / ${squares}`,
      rounded(leverage, 5, ""),
    ),
  ];
}

/** How many standard deviations the bound lies below the line, and what that rests on. */
function boundFactor(
  { degreesOfFreedom }: FittedStrength,
  leverage: number,
  { statistic, confidence }: NonNullable<StudyResult["config"]["strength"]["requirement"]>,
): { readonly k: number; readonly lines: readonly CalculationLine[] } {
  const coverage = 0.95;
  const probability = 1 - confidence;
  const k = -boundOffset({ statistic, probability, coverage, leverage, degreesOfFreedom });
  const factor = rounded(k, 4, "");
  const freedom = given("ν", say`degrees of freedom`, degreesOfFreedom, "", "regression-line");
  const percent = exact(100 * confidence);
  if (statistic === "tolerance") {
    const z = normalQuantile(coverage);
    const root = Math.sqrt(leverage);
    return {
      k,
      lines: [
        freedom,
        given("z", say`normal quantile of 95 %`, z, ""),
        follows("δ = z / √h", formula`${z} / √(${leverage})`, rounded(z / root, 3, "")),
        given(
          "t′",
          say`quantile of the noncentral t distribution for ${percent} %, ν and δ`,
          k / root,
          "",
        ),
        follows("k = t′ √h", formula`${k / root} × √(${leverage})`, factor),
      ],
    };
  }
  const t = tQuantile(confidence, degreesOfFreedom);
  return {
    k,
    lines: [
      freedom,
      given("t", say`quantile of the t distribution for ${percent} % and ν`, t, ""),
      statistic === "prediction"
        ? follows("k = t √(1 + h)", formula`${t} × √(1 + ${leverage})`, factor)
        : follows("k = t √h", formula`${t} × √(${leverage})`, factor),
    ],
  };
}

function batchCalculation(result: StudyResult): WorkedCalculation[] {
  const { mix, config } = result;
  const line = mix?.recipe.materials[0];
  if (!mix || !line) return [];
  const { dryMassKg: batchKg, cement, cementPct } = mix.recipe;
  const { name, sharePct, dryMassKg, moistMassKg } = line;
  const moisturePct = config.materials.find(({ id }) => id === line.id)?.moisturePct ?? 0;
  return [
    {
      kind: "batch",
      caption: say`Worked calculation: ${name} and cement of one batch`,
      lines: [
        given("M", say`dry soil and aggregate of the batch`, batchKg, "kg", "recipe"),
        given("x", say`share of ${name}`, sharePct, "%", "shares"),
        follows("D = M x / 100", formula`${batchKg} × ${sharePct} / 100`, mass(dryMassKg, result)),
        given("w", say`moisture of ${name}, of its dry mass`, moisturePct, "%", "materials-table"),
        follows(
          "m = D (1 + w / 100)",
          formula`${dryMassKg} × (1 + ${moisturePct} / 100)`,
          mass(moistMassKg, result),
          "recipe",
        ),
        given("c", say`cement content`, cementPct, "%", "least-cement"),
        follows(
          "Z = M c / 100",
          formula`${batchKg} × ${cementPct} / 100`,
          mass(cement.dryMassKg, result),
          "recipe",
        ),
      ],
    },
  ];
}

function waterCalculation(result: StudyResult): WorkedCalculation[] {
  const { mix, config } = result;
  if (!mix || mix.recipe.status === "too-wet") return [];
  const { recipe } = mix;
  const { targetMoisturePct } = recipe;
  const ofAll = recipe.moistureOf === "all-solids";
  const solids = ofAll ? recipe.dryMassWithCementKg : recipe.dryMassKg;
  const damp = recipe.materials.map(({ id, name, dryMassKg }) => ({
    name,
    dryMassKg,
    moisturePct: config.materials.find((one) => one.id === id)?.moisturePct ?? 0,
  }));
  const { targetKg, inMaterialsKg, toAddKg } = recipe.water;
  const brought = damp.map(
    ({ dryMassKg, moisturePct }) => formula`${dryMassKg} × ${moisturePct} / 100`,
  );
  return [
    {
      kind: "water",
      caption: say`Worked calculation: water to add to one batch`,
      lines: [
        given(
          "B",
          ofAll
            ? say`dry mass of all solids of the batch`
            : say`dry soil and aggregate of the batch`,
          solids,
          "kg",
          "recipe",
        ),
        given("w", say`water content at compaction`, targetMoisturePct, "%", "compaction-table"),
        follows(
          "T = B w / 100",
          formula`${solids} × ${targetMoisturePct} / 100`,
          mass(targetKg, result),
        ),
        ...damp.flatMap(({ name, dryMassKg, moisturePct: pct }, at) => [
          given(`D${at + 1}`, say`dry mass of ${name}`, dryMassKg, "kg", "recipe"),
          given(
            `w${at + 1}`,
            say`moisture of ${name}, of its dry mass`,
            pct,
            "%",
            "materials-table",
          ),
        ]),
        {
          ...follows("E", joinTexts(brought, " + "), mass(inMaterialsKg, result)),
          words: say`water that the damp materials bring`,
        },
        follows(
          "A = T − E",
          formula`${targetKg} − ${inMaterialsKg}`,
          mass(toAddKg, result),
          "recipe",
        ),
      ],
    },
  ];
}
