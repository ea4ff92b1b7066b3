import type { KeyValuesBlock, TableBlock } from "../blocks/block.js";
import type { ChosenModel } from "../grading/models/modelChoice.js";
import { displayUnit, formatQuantity, type UnitSystem } from "../quantities/format.js";
import { type CompactionAnalysis, PEAK_RULE } from "../soil/compaction/compactionTest.js";
import { moistureWindow } from "../soil/compaction/moistureWindow.js";
import type { ConsistencyResult } from "../soil/consistency/limits.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { digits, fixed, numberColumn, plain, quantity } from "./cell.js";
import { type ListLine, listOf, type Optional, quantityCells, tableOf } from "./tableOf.js";

/** Liquid and plastic limit, plasticity and shrinkage of a material. */
export function limitsTable(name: string, limits: ConsistencyResult): KeyValuesBlock {
  const plasticity: Optional<ListLine>[] = limits.nonPlastic
    ? [[say`Plasticity`, say`non-plastic, as reported by the laboratory`]]
    : [
        [say`Liquid limit`, liquidLimitText(limits)],
        [say`Plastic limit`, percent(limits.plasticLimitPct)],
        [say`Plasticity index`, percent(limits.plasticityIndexPct)],
        [say`A-line at this liquid limit`, aLineText(limits)],
        [say`Linear shrinkage (bar)`, percent(limits.linearShrinkagePct)],
        limits.reported && [
          say`Readings`,
          say`reported by the laboratory without readings, at least in part`,
        ],
      ];
  return listOf(say`Consistency and shrinkage: ${name}`, [...plasticity, ...longBoxLines(limits)]);
}

function percent(value: number | undefined): Text {
  return value === undefined ? say`not measured` : say`${fixed(value, 1)} %`;
}

function liquidLimitText({
  liquidLimitPct,
  flowLine,
  liquidLimitInterval95: interval,
}: ConsistencyResult): Text {
  const method = flowLine
    ? say`${percent(liquidLimitPct)} (${wordFor(flowLine.method)})`
    : percent(liquidLimitPct);
  return interval
    ? say`${method}; 95 % interval ${fixed(interval[0], 1)} to ${fixed(interval[1], 1)} %`
    : method;
}

function aLineText({ aLinePct, aboveALine }: ConsistencyResult): Text {
  if (aboveALine === undefined) return percent(aLinePct);
  return aboveALine
    ? say`${percent(aLinePct)}; the soil plots on or above it`
    : say`${percent(aLinePct)}; the soil plots below it`;
}

/** The long field box, apart from the bar. */
function longBoxLines({ longBox }: ConsistencyResult): ListLine[] {
  if (!longBox) return [];
  const { shrinkageMm, shrinkagePct, per600Mm, advice, caution } = longBox;
  return [
    [
      say`Long box (field test)`,
      say`${fixed(shrinkagePct, 1)} %: ${plain(shrinkageMm)} mm, or ${plain(per600Mm)} mm of a box of 600 mm`,
    ],
    ...advice.map(
      ({ source, soilToCement }): ListLine => [
        say`Long box, cement for pressed blocks by loose volume`,
        soilToCement === undefined
          ? say`beyond the table (${source})`
          : say`1 part to ${soilToCement} parts of soil (${source})`,
      ],
    ),
    [
      say`Bar and long box`,
      say`The two shrinkages are not comparable: the box is filled wetter, is longer and dries in the open. ${caution}`,
    ],
  ];
}

/** Parameters of the models that are words, not symbols. */
const PARAMETERS: Readonly<Record<string, Text | undefined>> = {
  median: say`median`,
  spread: say`spread`,
  topSize: say`top size`,
  exponent: say`exponent`,
  size63: say`size that 63 % pass`,
  residualSize: say`residual size`,
  clayShare: say`share of clay`,
  fineShare: say`share of the fine part`,
  fineMedian: say`median of the fine part`,
  fineSpread: say`spread of the fine part`,
  coarseMedian: say`median of the coarse part`,
  coarseSpread: say`spread of the coarse part`,
  fineA: say`a of the fine part`,
  fineN: say`n of the fine part`,
  fineM: say`m of the fine part`,
  coarseA: say`a of the coarse part`,
  coarseN: say`n of the coarse part`,
  coarseM: say`m of the coarse part`,
};

/** The models of a curve, best first. */
export function modelTable(name: string, models: ChosenModel): TableBlock {
  return tableOf(
    say`Smooth models of the grading: ${name}`,
    models.ranking,
    [
      [say`Model`, ({ fit }) => fit.title],
      [
        say`Parameters with standard errors`,
        ({ fit }) =>
          joinTexts(
            fit.parameters.map(
              ({ name: parameter, value, standardError, unit }) =>
                say`${PARAMETERS[parameter] ?? parameter} = ${digits(value, 3)} ± ${digits(standardError, 2)}${unit ? ` ${unit}` : ""}`,
            ),
            "; ",
          ),
      ],
      [numberColumn(say`Residual`, say`points`), ({ fit }) => fixed(fit.residualSdPct, 2)],
      [numberColumn(say`AICc above the best`), ({ deltaAicc }) => fixed(deltaAicc, 1)],
    ],
    [
      say`AICc weighs closeness against the number of parameters; these readings do not separate models within 2 of the best.`,
      ...models.ranking.flatMap(({ fit }) =>
        fit.warnings.map((warning) => say`${fit.title}: ${warning}`),
      ),
      ...models.leftOut.map(({ model, reason }) => say`Left out, ${model}: ${reason}`),
    ],
  );
}

/** What is found about grains that were taken out before compaction: the values of the table rest on it. */
const SCREENED: ReadonlySet<string> = new Set([
  "compaction-corrected",
  "much-screened-off",
  "screened-not-corrected",
]);

/** The points of a compaction test and what was read off them. */
export function compactionTable(compaction: CompactionAnalysis, units: UnitSystem): TableBlock {
  const { peak } = compaction;
  const density = (value: number) => quantity(value, "density", units, 4);
  const withVoids = compaction.points.some(({ airVoidsPct }) => airVoidsPct !== undefined);
  const interval = (
    range: readonly [number, number] | undefined,
    write: (value: number) => Text,
  ) => (range ? say` (95 % interval ${write(range[0])} to ${write(range[1])})` : "");
  return tableOf(
    say`Compaction`,
    compaction.points,
    [
      [numberColumn(say`Water content`, "%"), (point) => fixed(point.waterContentPct, 1)],
      quantityCells(say`Moist density`, "density", units, (point) => point.bulkDensityKgM3, 4),
      quantityCells(say`Dry density`, "density", units, (point) => point.dryDensityKgM3, 4),
      withVoids && [numberColumn(say`Air voids`, "%"), (point) => fixed(point.airVoidsPct, 1)],
    ],
    peak
      ? [
          ...(compaction.method === undefined
            ? []
            : [say`How it was compacted, as the sheet says: ${compaction.method}.`]),
          ...compaction.findings
            .filter(({ code }) => SCREENED.has(code))
            .map(({ message }) => message),
          say`Optimum ${fixed(peak.optimumWaterPct, 1)} % water${interval(peak.optimumInterval95, (value) => fixed(value, 1))}, maximum dry density ${formatQuantity(peak.maximumDryDensityKgM3, "density", units, 4)}${interval(peak.maximumInterval95, density)}; method: ${wordFor(peak.method)}.`,
          ...compaction.alternatives.map(
            (other) =>
              say`By ${wordFor(other.method)}: ${fixed(other.optimumWaterPct, 1)} %, ${density(other.maximumDryDensityKgM3)} ${displayUnit("density", units)}.`,
          ),
          ...(peak.method === "reported" ? [] : [PEAK_RULE]),
        ]
      : [say`The points show no peak, so no optimum is given.`],
  );
}

/**
 * How wet the mix may be rammed: the water contents that keep a share of the maximum dry density of the
 * compaction test.
 *
 * @param relativePct percent of the maximum; default as `moistureWindow`: 98 (common practice, no source).
 * @returns `undefined` where the points show no peak.
 * @throws RangeError where the share is not above 0 and at most 100.
 *
 * @example
 * const points = [[6.5, 1872], [8.7, 1966], [10.6, 2043], [12.2, 2068], [14.4, 1996]].map(([waterContentPct, moistMassG], index) => ({ waterContentPct, moistMassG, row: index + 5 }));
 * render(moistureWindowTable(analyseCompaction({ file: "c.csv", mouldVolumeCm3: 1000, points }), "SI").items[1].value) // => "8.8 %"
 */
export function moistureWindowTable(
  compaction: CompactionAnalysis,
  units: UnitSystem,
  relativePct?: number,
): KeyValuesBlock | undefined {
  const window = moistureWindow(compaction, relativePct);
  if (!window) return undefined;
  const { driestPct, wettestPct, openDry, openWet, minDryDensityKgM3 } = window;
  return listOf(say`Compaction moisture range, by the compaction test`, [
    [
      say`Density at the ends of this range`,
      say`${window.relativePct} % of the maximum (common practice, no source): at least ${formatQuantity(minDryDensityKgM3, "density", units, 4)}`,
    ],
    [
      say`Minimum moisture`,
      openDry
        ? say`${percent(driestPct)}, where the tests end: drier was not tested`
        : percent(driestPct),
    ],
    [
      say`Maximum moisture`,
      openWet
        ? say`${percent(wettestPct)}, where the tests end: wetter was not tested`
        : percent(wettestPct),
    ],
    [
      say`Holds for`,
      say`the compactive effort of the test: more effort gives a drier optimum, less effort a wetter one`,
    ],
  ]);
}
