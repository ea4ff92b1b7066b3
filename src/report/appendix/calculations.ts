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

/** Signs and numbers of a formula: the same in every language but for the decimal sign. */
function formula(strings: TemplateStringsArray, ...values: readonly Text[]): Text {
  return joinTexts(
    strings.flatMap((part, at) => (at < values.length ? [part, values[at]] : [part])),
    "",
  );
}

/** A formula without numbers, as everybody writes it. */
function symbols(text: string): Text {
  return text;
}

const exact = (value: number) => formatPlain(value, 6);

function given(
  symbol: string,
  words: Text,
  value: number,
  unit: string,
  to?: string,
): CalculationLine {
  return { symbol, words, value, shown: withUnit(exact(value), unit), to };
}

function follows(
  line: Omit<CalculationLine, "shown">,
  decimals: number,
  unit: string,
): CalculationLine {
  return { ...line, shown: withUnit(formatFixed(line.value, decimals), unit) };
}

function withUnit(number: Text, unit: string): Text {
  return unit === "" ? number : formula`${number} ${unit}`;
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
  const arriving = (portion: number) =>
    sieve.rows.filter((row) => row.portion < portion).at(-1)?.passingPct ?? 100;
  return [0, 1].flatMap((portion): WorkedCalculation[] => {
    const rows = sieve.rows.filter((row) => row.portion === portion);
    const set = sieve.sets.find((one) => one.portion === portion);
    // Reported percentages leave nothing to work out.
    if (rows.length === 0 || !set || sieve.massesUnknown) return [];
    const upTo = rows.slice(0, Math.ceil(rows.length / 2));
    const last = upTo[upTo.length - 1];
    const retained = upTo.map((row, at) =>
      given(
        `R${at + 1}`,
        say`retained on ${sieveName(row)}`,
        row.retainedG,
        "g",
        sheetRow(source, row.row),
      ),
    );
    const total = sum(upTo.map(({ retainedG }) => retainedG));
    const added = follows(
      {
        symbol: "ΣR",
        words: say`sum of the masses retained`,
        filled: joinTexts(
          upTo.map(({ retainedG }) => exact(retainedG)),
          " + ",
        ),
        value: total,
      },
      2,
      "g",
    );
    const [whole] = sieve.sets;
    const washedPct = (100 * whole.washedOutG) / whole.dryMassG;
    const to = `sieving-${id}`;
    const { dryMassG } = set;
    const [mass, from, washed] = [dryMassG, arriving(1), washedPct].map(exact);
    return portion === 0
      ? [
          {
            kind: "sieve",
            caption: say`Worked calculation: passing ${sieveName(last)}, of ${name}`,
            lines: [
              given("M", say`dry mass before washing`, dryMassG, "g"),
              ...retained,
              added,
              follows(
                {
                  symbol: "P",
                  words: symbols("P = 100 (1 − ΣR / M)"),
                  filled: formula`100 × (1 − ${exact(total)} / ${mass})`,
                  value: last.passingPct,
                  to,
                },
                1,
                "%",
              ),
            ],
          },
        ]
      : [
          {
            kind: "subsample",
            caption: say`Worked calculation: passing ${sieveName(last)}, of ${name}, sieved on a subsample`,
            lines: [
              given("m", say`dry mass of the subsample`, dryMassG, "g"),
              given("Ps", say`passing the sieve that the subsample passed`, arriving(1), "%", to),
              given("W", say`washed out of the whole sample`, washedPct, "%", to),
              ...retained,
              added,
              follows(
                {
                  symbol: "P",
                  words: symbols("P = W + (Ps − W) (1 − ΣR / m)"),
                  filled: formula`${washed} + (${from} − ${washed}) × (1 − ${exact(total)} / ${mass})`,
                  value: last.passingPct,
                  to,
                },
                1,
                "%",
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
  const reading = sheetRow(material?.hydrometer, row.row);
  const { effectiveDepthCm, viscosityMPaS, waterDensityKgM3, timeMin } = row;
  const gravity = density / 1000;
  const corrected = exact(row.correctedReading);
  return [
    {
      kind: "hydrometer",
      caption: say`Worked calculation: hydrometer reading at ${exact(timeMin)} min of ${name}`,
      lines: [
        given("R", say`reading`, row.reading, "", reading),
        given("C", say`control reading`, row.control, "", reading),
        given("t", say`time`, timeMin, "min", reading),
        given(
          "η",
          say`viscosity of water at ${formatFixed(row.temperatureC, 1)} °C`,
          viscosityMPaS,
          "mPa·s",
        ),
        given("ρw", say`density of water at that temperature`, waterDensityKgM3, "kg/m³"),
        given("ρs", say`particle density`, density, "kg/m³", "materials-table"),
        given("L", say`effective depth`, effectiveDepthCm, "cm", to),
        given("g", say`acceleration of gravity`, GRAVITY, "m/s²"),
        follows(
          {
            symbol: "d",
            words: symbols("d = √(18 η L / ((ρs − ρw) g t))"),
            filled: formula`1000 × √(18 × ${exact(viscosityMPaS)} / 1000 × ${exact(effectiveDepthCm)} / 100 / ((${exact(density)} − ${exact(waterDensityKgM3)}) × ${exact(GRAVITY)} × 60 × ${exact(timeMin)}))`,
            value: row.sizeMm,
            to,
          },
          4,
          "mm",
        ),
        follows(
          {
            symbol: "Rc",
            words: symbols("Rc = R − C"),
            filled: formula`${exact(row.reading)} − ${exact(row.control)}`,
            value: row.correctedReading,
            to,
          },
          hydrometer === "152H" ? 2 : 5,
          "",
        ),
        given("m", say`dry mass dispersed`, dryMassG, "g"),
        hydrometer === "152H"
          ? given(
              "a",
              say`factor of the particle density, 1.65 ρs / (2.65 (ρs − 1)), in Mg/m³`,
              densityFactor,
              "",
            )
          : given(
              "k",
              say`factor of the particle density, 1000 ρs / (ρs − 1), in Mg/m³`,
              (1000 * gravity) / (gravity - 1),
              "",
            ),
        follows(
          {
            symbol: "F",
            words:
              hydrometer === "152H" ? symbols("F = 100 Rc a / m") : symbols("F = 100 k Rc / m"),
            filled:
              hydrometer === "152H"
                ? formula`100 × ${corrected} × ${exact(densityFactor)} / ${exact(dryMassG)}`
                : formula`100 × ${exact((1000 * gravity) / (gravity - 1))} × ${corrected} / ${exact(dryMassG)}`,
            value: row.finerOfDispersedPct,
            to,
          },
          1,
          "%",
        ),
        given(
          "Ps",
          say`passing the sieve that separated the dispersed part`,
          passingSeparatingPct,
          "%",
          `sieving-${id}`,
        ),
        follows(
          {
            symbol: "P",
            words: symbols("P = F Ps / 100"),
            filled: formula`${exact(row.finerOfDispersedPct)} × ${exact(passingSeparatingPct)} / 100`,
            value: row.passingPct,
            to,
          },
          1,
          "%",
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
  const size = exact(point.sizeMm);
  const terms = used.map(
    ({ sharePct, passingPct }) => formula`${exact(sharePct)} × ${exact(passingPct)} / 100`,
  );
  return [
    {
      kind: "blend",
      caption: say`Worked calculation: the blend's passing at ${size} mm`,
      lines: [
        ...used.flatMap(({ id, name, sharePct, passingPct }, at) => [
          given(`x${at + 1}`, say`share of ${name}`, sharePct, "%", "shares"),
          given(`P${at + 1}`, say`passing of ${name}`, passingPct, "%", `sieving-${id}`),
        ]),
        follows(
          {
            symbol: "P",
            words: symbols("P = Σ x P / 100"),
            filled: joinTexts(terms, " + "),
            value: point.blendPct,
            to: "blend-fit",
          },
          1,
          "%",
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
  const facts = STRENGTH_MODELS[fit.model];
  const { value, leverage, sd } = strengthAt(fit, content);
  const logStrength = facts.strengthScale === "logarithm";
  const unit = logStrength ? "" : "MPa";
  const fitted = lineLines(fit, content, value, leverage);
  const factor = boundFactor(fit, leverage, requirement);
  const [y, k, s] = [value, factor.value, sd].map(exact);
  const last = logStrength
    ? { words: symbols("f = exp(y − k s)"), filled: formula`exp(${y} − ${k} × ${s})` }
    : { words: symbols("f = y − k s"), filled: formula`${y} − ${k} × ${s}` };
  const line = follows({ symbol: "f", ...last, value: bound, to: "bands" }, 2, "MPa");
  return [
    {
      kind: "bound",
      caption: say`Worked calculation: the lower bound of strength at ${exact(content)} % cement`,
      lines: [
        ...fitted,
        given("s", say`residual standard deviation at that content`, sd, unit, "regression-line"),
        ...factor.lines,
        config.units === "SI"
          ? line
          : {
              ...line,
              shown: formula`${line.shown} (${formatQuantity(bound, "stress", config.units)})`,
            },
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
  const name =
    strengthScale === "logarithm" ? say`ln of the fitted strength` : say`fitted strength`;
  const unit = strengthScale === "logarithm" ? "" : "MPa";
  const c = given("c", say`cement content`, content, "%", "least-cement");
  if (!plainLine) {
    return [
      c,
      given("y", name, value, unit, "regression-line"),
      given("h", say`leverage of that content, as the regression gives it`, leverage, ""),
    ];
  }
  const scaled = (pct: number) => (contentScale === "logarithm" ? Math.log(pct) : pct);
  const x = scaled(content);
  const all = fit.points.map(({ cementPct }) => scaled(cementPct));
  const centre = mean(all);
  const squares = sumNthPowerDeviations(all, 2);
  const [a, b] = fit.coefficients.map((coefficient) => coefficient.value);
  const logarithm: CalculationLine[] =
    contentScale === "logarithm"
      ? [
          follows(
            {
              symbol: "x",
              words: symbols("x = ln c"),
              filled: formula`ln(${exact(content)})`,
              value: x,
            },
            5,
            "",
          ),
        ]
      : [];
  const [place, middle] = [exact(x), exact(centre)];
  return [
    c,
    ...logarithm,
    given("a", say`intercept of the line`, a, "", "regression-line"),
    given("b", say`slope of the line`, b, "", "regression-line"),
    follows(
      {
        symbol: "y",
        words: contentScale === "logarithm" ? symbols("y = a + b x") : symbols("y = a + b c"),
        filled: formula`${exact(a)} + ${exact(b)} × ${place}`,
        value,
        to: "bands",
      },
      4,
      unit,
    ),
    given("n", say`blocks in the regression`, all.length, "", "blocks"),
    given("x̄", say`mean of their contents`, centre, ""),
    given("S", say`sum of the squared distances from that mean`, squares, ""),
    follows(
      {
        symbol: "h",
        words:
          contentScale === "logarithm"
            ? symbols("h = 1/n + (x − x̄)² / S")
            : symbols("h = 1/n + (c − x̄)² / S"),
        filled: formula`1 / ${exact(all.length)} + (${place} − ${middle})² / ${exact(squares)}`,
        value: leverage,
      },
      5,
      "",
    ),
  ];
}

/** How many standard deviations the bound lies below the line, and what that rests on. */
function boundFactor(
  { degreesOfFreedom }: FittedStrength,
  leverage: number,
  { statistic, confidence }: NonNullable<StudyResult["config"]["strength"]["requirement"]>,
): { readonly value: number; readonly lines: readonly CalculationLine[] } {
  const coverage = 0.95;
  const value = -boundOffset({
    statistic,
    probability: 1 - confidence,
    coverage,
    leverage,
    degreesOfFreedom,
  });
  const freedom = given("ν", say`degrees of freedom`, degreesOfFreedom, "", "regression-line");
  const h = exact(leverage);
  if (statistic === "tolerance") {
    const z = normalQuantile(coverage);
    const root = Math.sqrt(leverage);
    return {
      value,
      lines: [
        freedom,
        given("z", say`normal quantile of 95 %`, z, ""),
        follows(
          {
            symbol: "δ",
            words: symbols("δ = z / √h"),
            filled: formula`${exact(z)} / √(${h})`,
            value: z / root,
          },
          3,
          "",
        ),
        given(
          "t′",
          say`quantile of the noncentral t distribution for ${exact(100 * confidence)} %, ν and δ`,
          value / root,
          "",
        ),
        follows(
          {
            symbol: "k",
            words: symbols("k = t′ √h"),
            filled: formula`${exact(value / root)} × √(${h})`,
            value,
          },
          4,
          "",
        ),
      ],
    };
  }
  const t = tQuantile(confidence, degreesOfFreedom);
  const block = statistic === "prediction";
  return {
    value,
    lines: [
      freedom,
      given("t", say`quantile of the t distribution for ${exact(100 * confidence)} % and ν`, t, ""),
      follows(
        {
          symbol: "k",
          words: block ? symbols("k = t √(1 + h)") : symbols("k = t √h"),
          filled: block ? formula`${exact(t)} × √(1 + ${h})` : formula`${exact(t)} × √(${h})`,
          value,
        },
        4,
        "",
      ),
    ],
  };
}

/** A mass that was worked out in kilograms, with the study's unit behind it. */
function massLine(line: Omit<CalculationLine, "shown">, { config }: StudyResult): CalculationLine {
  const kilograms = follows(line, 2, "kg");
  return config.units === "SI"
    ? kilograms
    : {
        ...kilograms,
        shown: formula`${kilograms.shown} (${formatQuantity(1000 * line.value, "mass", config.units)})`,
      };
}

function batchCalculation(result: StudyResult): WorkedCalculation[] {
  const { mix, config } = result;
  const line = mix?.recipe.materials[0];
  if (!mix || !line) return [];
  const { dryMassKg, cement, cementPct } = mix.recipe;
  const material = config.materials.find(({ id }) => id === line.id);
  const moisture = material?.moisturePct ?? 0;
  const mass = exact(dryMassKg);
  return [
    {
      kind: "batch",
      caption: say`Worked calculation: ${line.name} and cement of one batch`,
      lines: [
        given("M", say`dry soil and aggregate of the batch`, dryMassKg, "kg", "recipe"),
        given("x", say`share of ${line.name}`, line.sharePct, "%", "shares"),
        massLine(
          {
            symbol: "D",
            words: symbols("D = M x / 100"),
            filled: formula`${mass} × ${exact(line.sharePct)} / 100`,
            value: line.dryMassKg,
          },
          result,
        ),
        given(
          "w",
          say`moisture of ${line.name}, of its dry mass`,
          moisture,
          "%",
          "materials-table",
        ),
        massLine(
          {
            symbol: "m",
            words: symbols("m = D (1 + w / 100)"),
            filled: formula`${exact(line.dryMassKg)} × (1 + ${exact(moisture)} / 100)`,
            value: line.moistMassKg,
            to: "recipe",
          },
          result,
        ),
        given("c", say`cement content`, cementPct, "%", "least-cement"),
        massLine(
          {
            symbol: "Z",
            words: symbols("Z = M c / 100"),
            filled: formula`${mass} × ${exact(cementPct)} / 100`,
            value: cement.dryMassKg,
            to: "recipe",
          },
          result,
        ),
      ],
    },
  ];
}

function waterCalculation(result: StudyResult): WorkedCalculation[] {
  const { mix, config } = result;
  if (!mix || mix.recipe.status === "too-wet") return [];
  const { recipe } = mix;
  const ofAll = recipe.moistureOf === "all-solids";
  const solids = ofAll ? recipe.dryMassWithCementKg : recipe.dryMassKg;
  const damp = recipe.materials.map(({ id, name, dryMassKg }) => ({
    name,
    dryMassKg,
    moisturePct: config.materials.find((one) => one.id === id)?.moisturePct ?? 0,
  }));
  const { targetKg, inMaterialsKg, toAddKg } = recipe.water;
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
        given(
          "w",
          say`water content at compaction`,
          recipe.targetMoisturePct,
          "%",
          "compaction-table",
        ),
        massLine(
          {
            symbol: "T",
            words: symbols("T = B w / 100"),
            filled: formula`${exact(solids)} × ${exact(recipe.targetMoisturePct)} / 100`,
            value: targetKg,
          },
          result,
        ),
        ...damp.flatMap(({ name, dryMassKg, moisturePct }, at) => [
          given(`D${at + 1}`, say`dry mass of ${name}`, dryMassKg, "kg", "recipe"),
          given(
            `w${at + 1}`,
            say`moisture of ${name}, of its dry mass`,
            moisturePct,
            "%",
            "materials-table",
          ),
        ]),
        massLine(
          {
            symbol: "E",
            words: say`water that the damp materials bring`,
            filled: joinTexts(
              damp.map(
                ({ dryMassKg, moisturePct }) =>
                  formula`${exact(dryMassKg)} × ${exact(moisturePct)} / 100`,
              ),
              " + ",
            ),
            value: inMaterialsKg,
          },
          result,
        ),
        massLine(
          {
            symbol: "A",
            words: symbols("A = T − E"),
            filled: formula`${exact(targetKg)} − ${exact(inMaterialsKg)}`,
            value: toAddKg,
            to: "recipe",
          },
          result,
        ),
      ],
    },
  ];
}
