import type { TableBlock } from "../blocks/block.js";
import { type CharacteristicSizes, finenessModulus } from "../grading/characteristics.js";
import type { GradingCurve } from "../grading/curve.js";
import { type Fractions, SIZE_BOUNDARIES, type SizeBoundaries } from "../grading/fractions.js";
import type { HydrometerAnalysis } from "../grading/sedimentation/hydrometer.js";
import type { JarAnalysis, JarComparison } from "../grading/sedimentation/jar.js";
import type { PipetteAnalysis } from "../grading/sedimentation/pipette.js";
import { WATER_SOURCES, type WaterBasis } from "../grading/sedimentation/settling.js";
import type { SieveAnalysis } from "../grading/sieveAnalysis.js";
import type { HydrometerType } from "../lab/hydrometer.js";
import type { Pretreatment } from "../lab/pretreatment.js";
import { displayValue, type UnitSystem } from "../quantities/format.js";
import { SIEVE_DESIGNATIONS } from "../quantities/sieves.js";
import { convertFromBase } from "../quantities/units.js";
import { joinTexts, say, type Text, wordFor } from "../words/message.js";
import { BLANK, digits, fixed, numberColumn, plain, quantityColumn, yesOrNo } from "./cell.js";
import { present, tableOf } from "./tableOf.js";

/** A sieve analysis, coarse to fine, with the balance of masses below it. */
export function sievingTable(name: string, analysis: SieveAnalysis): TableBlock {
  const split = analysis.rows.some(({ portion }) => portion > 0);
  // One division needs no number; several have to be told apart.
  const several = analysis.sets.length > 2;
  const weighed = !analysis.massesUnknown;
  return tableOf(
    say`Sieving: ${name}`,
    analysis.rows,
    [
      [numberColumn(say`Sieve`), (row) => row.label],
      [numberColumn(say`Opening`, "mm"), (row) => plain(row.sizeMm)],
      split && [say`Sieved on`, (row) => portionName(row.portion, several)],
      weighed && [numberColumn(say`Retained`, "g"), (row) => fixed(row.retainedG, 1)],
      [numberColumn(say`Retained, of the whole`, "%"), (row) => fixed(row.retainedPct, 1)],
      [numberColumn(say`Passing`, "%"), (row) => fixed(row.passingPct, 1)],
    ],
    weighed
      ? analysis.sets.map(({ portion, dryMassG, washedOutG, lossPct }) => {
          const loss = lossPct === undefined ? "" : say`, ${fixed(lossPct, 2)} % not recovered`;
          return say`${portionName(portion, several)}: ${fixed(dryMassG, 1)} g dry, ${fixed(washedOutG, 1)} g washed out${loss}.`;
        })
      : [say`Reported in percent: the masses are not known, and no balance can be made.`],
  );
}

function portionName(portion: number, several: boolean): Text {
  if (portion === 0) return say`Whole sample`;
  return several ? say`Subsample ${portion}` : say`Subsample`;
}

/** How deep the hydrometer's middle hangs, as laboratories write it. */
const DEPTH_UNIT: Readonly<Record<UnitSystem, string>> = { SI: "cm", US: "in" };

/** A hydrometer analysis in the order of time. */
export function sedimentationTable(
  name: string,
  analysis: HydrometerAnalysis,
  units: UnitSystem = "SI",
): TableBlock {
  const computed = analysis.rows.some(({ computedControl }) => computedControl !== undefined);
  const bs = analysis.rows.some(({ bsSizeMm }) => bsSizeMm !== undefined);
  // A BS scale counts thousandths of specific gravity.
  const reading = (difference: number) => digits(bs ? 1000 * difference : difference, 3);
  return tableOf(
    say`Sedimentation with the hydrometer: ${name}`,
    analysis.rows,
    [
      [numberColumn(say`Time`, "min"), (row) => plain(row.timeMin)],
      [
        quantityColumn(say`Temperature`, "temperature", units),
        (row) => fixed(displayValue(row.temperatureC, "temperature", units), 1),
      ],
      computed && [
        numberColumn(say`Control, computed`),
        (row) => controlCell(row.computedControl, bs),
      ],
      [numberColumn(say`Corrected reading`), (row) => reading(row.correctedReading)],
      [
        numberColumn(say`Effective depth`, DEPTH_UNIT[units]),
        (row) =>
          fixed(
            units === "SI"
              ? row.effectiveDepthCm
              : convertFromBase(10 * row.effectiveDepthCm, "in", "length"),
            2,
          ),
      ],
      [numberColumn(say`Size`, "mm"), (row) => digits(row.sizeMm, 3)],
      bs && [numberColumn(say`Size, form of BS 1377-2`, "mm"), (row) => digits(row.bsSizeMm, 3)],
      [
        numberColumn(say`Finer, of the dispersed mass`, "%"),
        (row) => fixed(row.finerOfDispersedPct, 1),
      ],
      [numberColumn(say`Passing, of the whole`, "%"), (row) => fixed(row.passingPct, 1)],
    ],
    sedimentationNotes(analysis),
  );
}

function controlCell(control: number | undefined, bs: boolean): Text {
  if (control === undefined) return BLANK;
  // Near 1 the digits that count stand behind three zeros.
  return bs ? fixed(1000 * (control - 1), 2) : fixed(control, control < 2 ? 4 : 2);
}

export interface NamedSizes {
  readonly name: Text;
  readonly sizes: CharacteristicSizes;
  readonly fractions: Fractions;
  /** With the curve of a sand its fineness modulus is told. */
  readonly role?: string;
  readonly curve?: GradingCurve;
}

/** The fineness modulus of each sand, as its supplier states it. */
function finenessNotes(entries: readonly NamedSizes[]): Text[] {
  const told = entries.flatMap(({ name, role, curve }): Text[] => {
    if (role !== "sand" || !curve) return [];
    const { value, interpolatedMm } = finenessModulus(curve);
    if (value === undefined) return [];
    return [
      interpolatedMm.length === 0
        ? say`${name} ${fixed(value, 2)}`
        : say`${name} ${fixed(value, 2)}, ${interpolatedMm.length} of its sieves read off the curve`,
    ];
  });
  return told.length > 0 ? [say`Fineness modulus: ${joinTexts(told, "; ")}.`] : [];
}

/** Characteristic sizes and fractions of several curves side by side. */
export function sizesTable(caption: Text, entries: readonly NamedSizes[]): TableBlock {
  const { boundaries } = entries[0].fractions;
  return tableOf(
    caption,
    entries,
    [
      [say`Curve`, ({ name }) => name],
      [numberColumn("D10", "mm"), ({ sizes }) => digits(sizes.d10, 3)],
      [numberColumn("D30", "mm"), ({ sizes }) => digits(sizes.d30, 3)],
      [numberColumn("D60", "mm"), ({ sizes }) => digits(sizes.d60, 3)],
      [numberColumn("Cu"), ({ sizes }) => digits(sizes.cu, 3)],
      [numberColumn("Cc"), ({ sizes }) => digits(sizes.cc, 3)],
      [numberColumn(say`Clay`, "%"), ({ fractions }) => fixed(fractions.clayPct, 1)],
      [numberColumn(say`Silt`, "%"), ({ fractions }) => fixed(fractions.siltPct, 1)],
      [numberColumn(say`Fines`, "%"), ({ fractions }) => fixed(fractions.finesPct, 1)],
      [numberColumn(say`Sand`, "%"), ({ fractions }) => fixed(fractions.sandPct, 1)],
      [numberColumn(say`Gravel`, "%"), ({ fractions }) => fixed(fractions.gravelPct, 1)],
    ],
    [
      ...finenessNotes(entries),
      entries[0].sizes.reading === "size"
        ? say`D-sizes are read on straight lines between the points, on size.`
        : say`D-sizes are read on straight lines between the points, on the logarithm of size.`,
      say`Boundaries: clay below ${boundaries.clayMm} mm, silt to ${boundary(boundaries.siltMm, boundaries)}, sand to ${boundary(boundaries.sandMm, boundaries)}, gravel to ${boundary(boundaries.gravelMm, boundaries)}. A dash: the size or fraction lies outside what was measured.`,
    ],
  );
}

/** A boundary with the sieve that it is, where the system is one of United States sieves. */
function boundary(sizeMm: number, { siltMm }: SizeBoundaries): Text {
  const sieve = SIEVE_DESIGNATIONS.find((each) => each.sizeMm === sizeMm);
  return siltMm === SIZE_BOUNDARIES.astm.siltMm && sieve
    ? say`${sieve.name} (${sizeMm} mm)`
    : say`${sizeMm} mm`;
}

/**
 * A pipette analysis in the order of time.
 *
 * @example
 * const record = { file: "p.csv", dryMassG: 20, separatingSizeMm: 0.063, cylinderVolumeCm3: 500, pipetteVolumeCm3: 10, dispersantG: 1, samples: [{ timeMin: 4.7, depthMm: 100, temperatureC: 20, solidsG: 0.22, row: 7 }] };
 * renderAll(pipetteTable("Clay", analysePipette(record, { particleDensityKgM3: 2650, passingSeparatingPct: 40 }))).rows // => [["4.7", "20.0", "100", "0.0199", "10.00", "50.0", "20.0"]]
 */
export function pipetteTable(
  name: string,
  analysis: PipetteAnalysis,
  units: UnitSystem = "SI",
): TableBlock {
  return tableOf(
    say`Sedimentation with the pipette: ${name}`,
    analysis.rows,
    [
      [numberColumn(say`Time`, "min"), (row) => plain(row.timeMin)],
      [
        quantityColumn(say`Temperature`, "temperature", units),
        (row) => fixed(displayValue(row.temperatureC, "temperature", units), 1),
      ],
      [numberColumn(say`Depth of the tip`, "mm"), (row) => plain(row.depthMm)],
      [numberColumn(say`Size`, "mm"), (row) => digits(row.sizeMm, 3)],
      [numberColumn(say`Finer, in the cylinder`, "g"), (row) => fixed(row.finerG, 2)],
      [
        numberColumn(say`Finer, of the dispersed mass`, "%"),
        (row) => fixed(row.finerOfDispersedPct, 1),
      ],
      [numberColumn(say`Passing, of the whole`, "%"), (row) => fixed(row.passingPct, 1)],
    ],
    [...pretreatmentNotes(analysis.pretreatment), waterNote(analysis.water)],
  );
}

/** What was done to the soil before, as a line below a sedimentation table. */
function pretreatmentNotes(pretreatment: Pretreatment | undefined): Text[] {
  if (!pretreatment) return [];
  const { text, lossPct } = pretreatment;
  return [
    lossPct === undefined
      ? say`Before dispersing: ${text}; the mass lost by it is not given.`
      : say`Before dispersing: ${text}; ${fixed(lossPct, 1)} % of the dry mass was lost by it. Percentages are of the mass after it.`,
  ];
}

/** Whose viscosity of water the sizes rest on. */
function waterNote(water: WaterBasis): Text {
  const { text, mark } = WATER_SOURCES[water];
  return say`Viscosity of water: ${text} (${mark}).`;
}

/** Lines below a hydrometer table: what of it is not as with a standard instrument and a control cylinder. */
function sedimentationNotes(analysis: HydrometerAnalysis): Text[] {
  const { corrections, calibration, hydrometer, method, pretreatment, water } = analysis;
  const bs = hydrometer === "BS";
  return present([
    method !== undefined && formNote(method, water),
    ...pretreatmentNotes(pretreatment),
    corrections && correctionsNote(corrections, hydrometer),
    calibration && calibrationNote(calibration, bs),
    bs &&
      say`Readings are thousandths above 1. The form of BS 1377-2 (read) takes water as 1 Mg/m³; the curve has the sizes by the density of water at the temperature of the reading.`,
    waterNote(water),
  ]);
}

/** The form of test that the laboratory names, and whether it is still in force. */
function formNote(method: string, water: WaterBasis): Text {
  return water === "ASTM D422"
    ? say`Form of test, as stated: ${method}. ASTM D422 was withdrawn in 2016, D7928 and D6913 took its place (from memory).`
    : say`Form of test, as stated: ${method}.`;
}

function correctionsNote(
  corrections: NonNullable<HydrometerAnalysis["corrections"]>,
  hydrometer: HydrometerType,
): Text {
  if ("temperatureDensity" in corrections) {
    const mark = hydrometer === "152H" ? say`read in a worked thesis` : say`from memory`;
    return say`No control cylinder was read: the control is computed by the temperature–density equation of ASTM D7928 (coefficients ${mark}) with its constant ${plain(corrections.temperatureDensity, 5)}.`;
  }
  const { dispersant, calibrationC = 20 } = corrections;
  return say`No control cylinder was read: the control is computed from the dispersant's ${plain(hydrometer === "BS" ? 1000 * dispersant : dispersant)} units, the meniscus and the temperature (scale right at ${plain(calibrationC)} °C).`;
}

function calibrationNote(
  calibration: NonNullable<HydrometerAnalysis["calibration"]>,
  bs: boolean,
): Text {
  if ("depths" in calibration) {
    const depths = calibration.depths.map(
      ({ reading, depthCm }) => say`${scale(reading, bs)} at ${fixed(depthCm, 2)} cm`,
    );
    return say`Effective depth by the instrument's own calibration: ${joinTexts(depths, "; ")}.`;
  }
  const { bulbLengthCm, bulbVolumeCm3, cylinderAreaCm2, marks } = calibration;
  const necks = marks.map(
    ({ reading, toNeckCm }) => say`${fixed(toNeckCm, 2)} cm at ${scale(reading, bs)}`,
  );
  if (bulbLengthCm === 0) {
    return say`Effective depth by the instrument's own dimensions: bulb ${fixed(bulbVolumeCm3, 1)} cm³, cylinder ${fixed(cylinderAreaCm2, 1)} cm²; to the middle of the bulb ${joinTexts(necks, "; ")}.`;
  }
  return say`Effective depth by the instrument's own dimensions: bulb ${fixed(bulbLengthCm, 2)} cm and ${fixed(bulbVolumeCm3, 1)} cm³, cylinder ${fixed(cylinderAreaCm2, 1)} cm²; to the neck ${joinTexts(necks, "; ")}.`;
}

function scale(reading: number, bs: boolean): Text {
  return bs ? plain(1000 * (reading - 1)) : plain(reading, 5);
}

/**
 * A jar test beside the laboratory's fractions: a first guide with the interval that its heights allow.
 *
 * @param jar the analysis, with the laboratory's shares where there are any: see `MaterialResult.jar`.
 *
 * @example
 * const layers = [["sand and gravel", 1, 60], ["silt", 930, 80], ["clay", 2880, 100]].map(([name, timeMin, topMm], index) => ({ name, timeMin, topMm, row: index + 4 }));
 * const analysis = analyseJar({ file: "j.csv", waterDepthMm: 200, layers });
 * renderAll(jarTable("Pit 1", analysis)).rows[2] // => ["clay", "20", "20", "4 to 14", "–", "–", "0.00113"]
 */
export function jarTable(
  name: string,
  { shares, laboratory = [] }: JarAnalysis & { readonly laboratory?: JarComparison["rows"] },
): TableBlock {
  return tableOf(
    say`Jar test, a first guide: ${name}`,
    shares.map((share, index) => ({ ...laboratory[index], ...share })),
    [
      [say`Layer`, (share) => wordFor(share.name)],
      [numberColumn(say`Height`, "mm"), ({ heightMm }) => plain(heightMm)],
      [
        numberColumn(say`Share of the height`, "%"),
        ({ heightSharePct }) => fixed(heightSharePct, 0),
      ],
      [
        numberColumn(say`Share of mass consistent with it`, "%"),
        ({ lowPct, highPct }) => say`${fixed(lowPct, 0)} to ${fixed(highPct, 0)}`,
      ],
      [
        numberColumn(say`Laboratory, of the mass in the jar`, "%"),
        ({ laboratoryPct }) => fixed(laboratoryPct, 1),
      ],
      [say`Agrees`, ({ agrees }) => yesOrNo(agrees)],
      [numberColumn(say`Finest size settled`, "mm"), ({ finestMm }) => digits(finestMm, 3)],
    ],
    [
      say`Heights are not masses: a layer of clay is mostly water. The interval takes each layer with the least and the most solids that such layers have (sand 0.55 to 0.65, silt 0.40 to 0.55, clay 0.10 to 0.30 of the volume; common practice, no source) and heights within 1 mm.`,
      say`The jar test is no part of the grading curve, the blend or any number that follows from them.`,
    ],
  );
}
