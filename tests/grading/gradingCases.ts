import type { GradingCurve } from "../../src/grading/curve.js";
import type { HydrometerRecord } from "../../src/lab/hydrometer.js";
import type { SieveRecord } from "../../src/lab/sieve.js";

/** A curve of sieve points from [size, passing] pairs. */
export function curveOf(...pairs: readonly (readonly [number, number])[]): GradingCurve {
  return {
    points: pairs
      .map(([sizeMm, passingPct]) => ({ sizeMm, passingPct, origin: "sieve" as const }))
      .sort((a, b) => a.sizeMm - b.sizeMm),
  };
}

/** A single, unwashed set. */
export function sieveRecord(
  openingsMm: readonly number[],
  retainedG: readonly number[],
  panG: number,
  more: Partial<SieveRecord> = {},
): SieveRecord {
  return {
    file: "sheets/sieve.csv",
    dryMassG: retainedG.reduce((sum, mass) => sum + mass, panG),
    splits: [],
    rows: openingsMm.map((sizeMm, index) => ({
      sizeMm,
      retainedG: retainedG[index],
      label: String(sizeMm),
      row: index + 4,
    })),
    panG,
    ...more,
  };
}

/** Readings as [minutes, reading, control, °C]. */
export function hydrometerRecord(
  readings: readonly (readonly [number, number, number, number])[],
  more: Partial<HydrometerRecord> = {},
): HydrometerRecord {
  return {
    file: "sheets/hydrometer.csv",
    hydrometer: "152H",
    dryMassG: 50,
    separatingSizeMm: 2,
    meniscusCorrection: 0.5,
    readings: readings.map(([timeMin, reading, control, temperatureC], index) => ({
      timeMin,
      reading,
      control,
      temperatureC,
      row: index + 6,
    })),
    ...more,
  };
}

/** Freezes a record through and through, so that a change to it throws. */
export function frozen<T>(value: T): T {
  if (value !== null && typeof value === "object") {
    for (const inner of Object.values(value)) frozen(inner);
    Object.freeze(value);
  }
  return value;
}
