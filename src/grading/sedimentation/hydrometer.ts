import { type Finding, finding, findingIf } from "../../findings/finding.js";
import type {
  HydrometerCalibration,
  HydrometerCorrections,
  HydrometerRecord,
  HydrometerType,
} from "../../lab/hydrometer.js";
import { checkThat } from "../../quantities/checkNumber.js";
import { formatPlain } from "../../quantities/format.js";
import { say, type Text } from "../../words/message.js";
import type { GradingPoint } from "../curve.js";
import { effectiveDepth, hydrometerDepth, UNITS_152H_PER_GRAVITY } from "./hydrometerDepth.js";
import {
  type SettlingInput,
  stokesDiameter,
  type WaterBasis,
  waterBasis,
  waterProperties,
} from "./settling.js";
import {
  checkDispersed,
  pretreatmentFindings,
  type SedimentationAnalysis,
  type SedimentationInput,
  type SedimentationRow,
  sedimentationPoints,
  suspensionFindings,
  temperatureFindings,
} from "./suspension.js";

/** One line of the hydrometer table of a report. */
export interface HydrometerAnalysisRow extends SedimentationRow {
  /** As read at the top of the meniscus. */
  readonly reading: number;
  /** The control that was taken off: read, or computed. */
  readonly control: number;
  /** What separate corrections stand for as a control reading; absent where a control was read. */
  readonly computedControl?: number;
  /** Reading less control, in the units of the record. */
  readonly correctedReading: number;
  readonly effectiveDepthCm: number;
  readonly waterDensityKgM3: number;
  /** Size by the form of BS 1377-2, for comparison; of a BS hydrometer only. */
  readonly bsSizeMm?: number;
}

export interface HydrometerAnalysis extends SedimentationAnalysis<HydrometerAnalysisRow> {
  readonly hydrometer: HydrometerType;
  /** Of what was dispersed. */
  readonly dryMassG: number;
  /** Percent of the whole sample that passes the sieve that separated it. */
  readonly passingSeparatingPct: number;
  /** Factor a of the 152H scale for particles that are not of 2650 kg/m³; 1 for the 151H, whose formula needs none. */
  readonly densityFactor: number;
  /** Form of test as the sheet, or the study for it, names it. */
  readonly method?: string;
  /** As the sheet gives them; absent where it does not. */
  readonly corrections?: HydrometerCorrections;
  readonly calibration?: HydrometerCalibration;
}

/**
 * Works out a hydrometer analysis (sedimentation in a 1 L cylinder) with a 152H, 151H, BS or density (g/mL) hydrometer.
 *
 * Formula: corrected reading Rc = reading − control, which takes off dispersant, temperature and
 * meniscus in one (ASTM D422 clause 7, read); where the record has corrections, the control
 * is what {@link separateCorrections} or {@link temperatureDensityControl} makes of them. Percent of the dispersed mass W finer than the size:
 * 152H: 100 Rc a / W (read, atechcenter.com hyd11) with a = 1.65 G / (2.65 (G − 1)), from memory;
 * 151H, BS and g/mL, in specific gravity: (100 000 / W) G / (G − 1) Rc (ASTM D422, from memory; the same as
 * the form of BS 1377-2, read, with thousandths).
 * Size: Stokes' law with the {@link waterProperties} that belong to the form of test, and the depth of {@link hydrometerDepth} where there is
 * a calibration, else of {@link effectiveDepth}; no remembered K table.
 * Percent of the whole sample: times the passing of the separating sieve / 100 (read, hyd12).
 * G = particle density / 1000 kg/m³.
 *
 * A BS hydrometer also gets the size of the form of BS 1377-2 for comparison.
 * A reading outside the water table (10 to 30 °C) gives a finding and no point.
 *
 * @throws RangeError where a time, mass or density is not positive, a percentage not 0 to 100, a
 * reading without control or corrections, or a BS hydrometer without a calibration.
 *
 * @example
 * const record = { file: "h.csv", hydrometer: "152H", dryMassG: 81.09, separatingSizeMm: 2, meniscusCorrection: 1, readings: [{ timeMin: 2, reading: 38, control: 7.5, temperatureC: 20, row: 6 }] };
 * const { rows } = analyseHydrometer(record, { particleDensityKgM3: 2650, passingSeparatingPct: 58 });
 * rows[0].finerOfDispersedPct // => 37.6
 * rows[0].passingPct // => 21.8
 */
export function analyseHydrometer(
  record: HydrometerRecord,
  input: SedimentationInput,
): HydrometerAnalysis {
  const { rows, densityFactor } = workedReadings(record, input);
  const { corrections, calibration, pretreatment } = record;
  return {
    points: sedimentationPoints(rows, input.passingSeparatingPct),
    rows,
    hydrometer: record.hydrometer,
    dryMassG: record.dryMassG,
    passingSeparatingPct: input.passingSeparatingPct,
    densityFactor,
    ...(record.method === undefined ? {} : { method: record.method }),
    water: basisOf(record),
    ...(corrections ? { corrections } : {}),
    ...(calibration ? { calibration } : {}),
    ...(pretreatment ? { pretreatment } : {}),
    findings: checkHydrometer(record, rows),
  };
}

/** The points alone, for the hundreds of sheets as they could have been read: nobody reads their findings. */
export function hydrometerPoints(
  record: HydrometerRecord,
  input: SedimentationInput,
): GradingPoint[] {
  return sedimentationPoints(workedReadings(record, input).rows, input.passingSeparatingPct);
}

function workedReadings(
  record: HydrometerRecord,
  input: SedimentationInput,
): Pick<HydrometerAnalysis, "rows" | "densityFactor"> {
  const { particleDensityKgM3, passingSeparatingPct } = input;
  checkDispersed(passingSeparatingPct, record.dryMassG);
  const isDensity = particleDensityKgM3 > 1000 && particleDensityKgM3 < Infinity;
  checkThat(isDensity, { particleDensityKgM3 }, "above 1000");
  for (const [index, { timeMin }] of record.readings.entries()) {
    checkThat(timeMin > 0, { [`readings[${index}].timeMin`]: timeMin }, "above 0");
  }
  const { hydrometer, calibration } = record;
  const is152H = hydrometer === "152H";
  const isKnown = is152H || hydrometer === "151H" || calibration !== undefined;
  checkThat(isKnown, { calibration }, `one for a ${hydrometer} hydrometer`);
  const gravity = particleDensityKgM3 / 1000;
  const densityFactor = is152H ? (1.65 * gravity) / (2.65 * (gravity - 1)) : 1;
  const pctPerUnit = is152H
    ? (100 * densityFactor) / record.dryMassG
    : ((100_000 / record.dryMassG) * gravity) / (gravity - 1);
  const scale = { ...input, pctPerUnit, basis: basisOf(record) };
  const rows = record.readings.flatMap((_, index) => analyseReading(record, index, scale));
  return { rows, densityFactor };
}

/** Density hydrometers (g/mL) are those of ISO 17892-4 (from memory), unless another form is named. */
function basisOf({ method, hydrometer }: HydrometerRecord): WaterBasis {
  return method === undefined && hydrometer === "g/mL" ? "ISO 17892-4" : waterBasis(method);
}

/** One reading worked out; none where water or depth are not known at it. */
function analyseReading(
  record: HydrometerRecord,
  index: number,
  input: SedimentationInput & { readonly pctPerUnit: number; readonly basis: WaterBasis },
): HydrometerAnalysisRow[] {
  const { timeMin, reading, control, temperatureC, row } = record.readings[index];
  const { particleDensityKgM3, passingSeparatingPct, pctPerUnit, basis } = input;
  const water = waterProperties(temperatureC, basis);
  const effectiveDepthCm = depthAt(record, reading);
  if (!water || !(effectiveDepthCm > 0)) return [];
  const computedControl =
    control === undefined && record.corrections
      ? computeControl(record, record.corrections, temperatureC)
      : undefined;
  const taken = control ?? computedControl;
  const controlName = `readings[${index}].control`;
  checkThat(taken !== undefined, { [controlName]: taken }, "a reading, or corrections");
  const correctedReading = reading - taken;
  const finerOfDispersedPct = correctedReading * pctPerUnit;
  const { viscosityMPaS, densityKgM3: waterDensityKgM3 } = water;
  const depthCm = effectiveDepthCm;
  const settling = { depthCm, timeMin, viscosityMPaS, waterDensityKgM3, particleDensityKgM3 };
  return [
    {
      row,
      timeMin,
      temperatureC,
      reading,
      control: taken,
      ...(computedControl === undefined ? {} : { computedControl }),
      correctedReading,
      effectiveDepthCm,
      viscosityMPaS,
      waterDensityKgM3,
      sizeMm: stokesDiameter(settling),
      ...(record.hydrometer === "BS" ? { bsSizeMm: bsSize(settling) } : {}),
      finerOfDispersedPct,
      passingPct: (finerOfDispersedPct * passingSeparatingPct) / 100,
    },
  ];
}

function depthAt(
  { hydrometer, meniscusCorrection, calibration }: HydrometerRecord,
  reading: number,
): number {
  const stem = reading + meniscusCorrection;
  return calibration ? hydrometerDepth(calibration, stem) : effectiveDepth(hydrometer, stem);
}

function computeControl(
  { hydrometer, meniscusCorrection }: HydrometerRecord,
  corrections: HydrometerCorrections,
  temperatureC: number,
): number | undefined {
  return "temperatureDensity" in corrections
    ? temperatureDensityControl(hydrometer, corrections.temperatureDensity, temperatureC)
    : separateCorrections({ hydrometer, meniscusCorrection, temperatureC, ...corrections });
}

/**
 * The control reading by the temperature–density equation of ASTM D7928, from its constant.
 *
 * Formula: 152H: B − 0.01248 T − 0.00795 T² (read in a worked thesis, with B 7.5); 151H:
 * A − 7.784·10⁻⁶ T − 4.959·10⁻⁶ T² (from memory; the same within 1 % of its terms in the other scale). The
 * constant is measured with the hydrometer in water and dispersant, and holds dispersant and meniscus.
 *
 * @returns in the hydrometer's units.
 * @throws RangeError for another hydrometer than 151H and 152H, or where a number is not finite.
 *
 * @example
 * temperatureDensityControl("152H", 7.5, 21.5) // => 3.5568
 * temperatureDensityControl("151H", 1.0045, 20) // => 1.00236
 */
export function temperatureDensityControl(
  hydrometer: HydrometerType,
  constant: number,
  temperatureC: number,
): number {
  checkThat(hydrometer === "152H" || hydrometer === "151H", { hydrometer }, "151H or 152H");
  checkThat(Number.isFinite(constant), { constant }, "a number");
  checkThat(Number.isFinite(temperatureC), { temperatureC }, "a number");
  const [linear, square] = hydrometer === "152H" ? [0.01248, 0.00795] : [7.784e-6, 4.959e-6];
  return constant - linear * temperatureC - square * temperatureC ** 2;
}

export interface SeparateCorrections {
  readonly hydrometer: HydrometerType;
  /** Temperature at the reading. */
  readonly temperatureC: number;
  /** What the dispersant adds to a reading, in the hydrometer's units; from a test or from its mass. */
  readonly dispersant: number;
  /** What is added to a reading at the top of the meniscus, in the hydrometer's units. */
  readonly meniscusCorrection: number;
  /** Temperature at which the scale is right; default 20. */
  readonly calibrationC?: number;
}

/** Volume expansion of the glass bulb per °C (soda-lime glass, from memory). */
const GLASS_PER_C = 2.5e-5;

/**
 * The control reading that separate corrections stand for, where no control cylinder was read.
 *
 * Formula: control = dispersant + temperature term − meniscus. The temperature term is computed: the
 * scale sinks with the density of water and rises with the bulb's expansion,
 * ρ(T) (1 + 2.5·10⁻⁵ (T − Tc)) / ρ(Tc) − 1 in specific gravity, times 1000 · 2.65 / 1.65 on the 152H
 * scale. Das's remembered −4.85 + 0.25 T gives 1.4 units at 25 °C where this gives 1.7 (a page read has
 * 1.3): a control cylinder is better than any of them.
 *
 * @returns in the hydrometer's units (152H: g/L; else specific gravity, about 1), for
 * `HydrometerReading.control`; `undefined` outside 10 to 30 °C.
 * @throws RangeError where a number is not finite.
 *
 * @example
 * separateCorrections({ hydrometer: "152H", temperatureC: 20, dispersant: 5, meniscusCorrection: 0.5 }) // => 4.5
 * separateCorrections({ hydrometer: "152H", temperatureC: 25, dispersant: 5, meniscusCorrection: 0.5 }) // => 2.83
 */
export function separateCorrections(input: SeparateCorrections): number | undefined {
  const { hydrometer, temperatureC, dispersant, meniscusCorrection, calibrationC = 20 } = input;
  for (const [name, value] of Object.entries({ dispersant, meniscusCorrection, calibrationC })) {
    checkThat(Number.isFinite(value), { [name]: value }, "a number");
  }
  const [now, then] = [waterProperties(temperatureC), waterProperties(calibrationC)];
  if (!now || !then) return undefined;
  const swollen = 1 + GLASS_PER_C * (temperatureC - calibrationC);
  const gravity = (now.densityKgM3 * swollen) / then.densityKgM3 - 1;
  const scale = hydrometer === "152H" ? UNITS_152H_PER_GRAVITY : 1;
  return (hydrometer === "152H" ? 0 : 1) + dispersant + gravity * scale - meniscusCorrection;
}

/** mm² of the printed formula, with viscosity in mPa·s, depth in mm, density in Mg/m³ and time in min. */
const CONSTANT = 0.005531;

/**
 * Size in mm by the blank form of BS 1377-2: a cross-check beside {@link analyseHydrometer}, which takes the
 * density of water at the test's temperature.
 *
 * Formula: D = 0.005531 √(η Hr / ((ρs − 1) t)) (read). The printed form takes water as 1 Mg/m³.
 */
function bsSize({ depthCm, timeMin, viscosityMPaS, particleDensityKgM3 }: SettlingInput): number {
  const excess = particleDensityKgM3 / 1000 - 1;
  return CONSTANT * Math.sqrt((viscosityMPaS * (10 * depthCm)) / (excess * timeMin));
}

/** Percentage points outside 0 to 100 that reading to half a division explains; common practice, no source. */
const SLACK_PCT = 3;

const EXPECTED: Readonly<Record<HydrometerType, Text>> = {
  "152H": say`about −5 to 60 (g/L)`,
  "151H": say`about 0.995 to 1.038`,
  BS: say`about −5 to 35 (thousandths above 1)`,
  "g/mL": say`about 0.995 to 1.035 (g/mL)`,
};

/** What is wrong or doubtful about hydrometer readings and the percentages made from them. */
function checkHydrometer(
  record: HydrometerRecord,
  rows: readonly HydrometerAnalysisRow[],
): Finding[] {
  const { file, pretreatment } = record;
  return [
    ...pretreatmentFindings(file, pretreatment),
    ...outsideMarks(record),
    ...record.readings.flatMap((reading) => [
      ...temperatureFindings(file, reading.row, reading.temperatureC),
      ...offScale(record, reading),
    ]),
    ...suspensionFindings(rows, {
      file,
      column: "reading",
      slackPct: SLACK_PCT,
      below: say`The reading is below the control reading: the concentration in suspension would be negative.`,
      remedy: say`Check the dry mass, the control reading and the meniscus correction.`,
      before: "reading",
      riseRemedy: say`Check both readings, the control and the temperature.`,
    }),
  ];
}

/** Part of the calibrated span that a reading may lie beyond it without a remark; common practice, no source. */
const BEYOND_MARKS = 0.02;

/** Readings beyond the calibrated marks: the scale is even, but nobody measured there. */
function outsideMarks(record: HydrometerRecord): Finding[] {
  const { file, readings, meniscusCorrection, hydrometer, calibration } = record;
  if (!calibration) return [];
  const marks = "depths" in calibration ? calibration.depths : calibration.marks;
  const calibrated = marks.map(({ reading }) => reading);
  const [low, high] = [Math.min(...calibrated), Math.max(...calibrated)];
  const beyond = readings.filter(({ reading }) => {
    const stem = reading + meniscusCorrection;
    return Math.max(low - stem, stem - high) > BEYOND_MARKS * (high - low);
  });
  return beyond.slice(0, 1).map(({ row, reading }) => {
    const place = { file, row, column: "reading", value: onScale(hydrometer, reading) };
    return finding(place, "warning", "outside-calibration", {
      message: say`${beyond.length}{0, plural, one { reading lies} other { readings lie}} outside the calibrated marks; their effective depth was extrapolated along the scale.`,
      expected: say`readings from ${onScale(hydrometer, low)} to ${onScale(hydrometer, high)}, meniscus added`,
      remedy: say`Measure the depth at a mark beyond these readings.`,
    });
  });
}

function offScale(
  record: HydrometerRecord,
  { reading, row }: HydrometerRecord["readings"][number],
): Finding[] {
  const { file, hydrometer } = record;
  const isOff = !(depthAt(record, reading) > 0);
  const place = { file, row, column: "reading", value: onScale(hydrometer, reading) };
  return findingIf(isOff, place, "error", "reading-off-scale", {
    message: say`This reading is not on the scale of a ${hydrometer} hydrometer.`,
    expected: EXPECTED[hydrometer],
    remedy: say`Check the reading and the type of hydrometer.`,
  });
}

/** A reading as it stands on the stem. */
function onScale(hydrometer: HydrometerType, reading: number): Text {
  return formatPlain(hydrometer === "BS" ? 1000 * (reading - 1) : reading, 5);
}
