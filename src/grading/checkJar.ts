import type { Finding } from "../lab/finding.js";
import type { JarRecord } from "../lab/jarRecord.js";
import { formatNumber } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";

/** Size that ends a layer (ISO 14688-1); clay settles to the end of the test. */
const ENDS_MM = [0.063, 0.002];
/** Factor between the size that had settled and the one that ends the layer; common practice, no source. */
const FAR = 2;
/** Clay hardly settles before a day; common practice, no source. */
const LAST_READING_MIN = 1440;

/** What is doubtful about a jar test; the first finding always is that it is a first guide. */
export function checkJar(
  { file, layers, temperatureC }: JarRecord,
  settledMm: readonly (number | undefined)[],
): Finding[] {
  const last = layers[layers.length - 1];
  const findings: Finding[] = [
    {
      severity: "warning",
      code: "jar-first-guide",
      file,
      message: say`Layer heights are not masses: clay settles loose and looks like more than it is, and flocculated clay settles with the silt. The test is a first guide only.`,
      expected: say`sieving and a hydrometer or pipette before a mix is decided`,
      wayOut: say`Use the shares to choose which soils go to the laboratory.`,
    },
  ];
  if (temperatureC === undefined) {
    findings.push({
      severity: "note",
      code: "jar-temperature-taken",
      file,
      message: say`The sheet gives no temperature: 20 °C was taken for the settling times.`,
      expected: say`“temperature (C)” above the table`,
      wayOut: say`Nothing to do, unless the water was cold: at 10 °C it takes 30 % longer.`,
    });
  } else if (settledMm.includes(undefined)) {
    findings.push({
      severity: "warning",
      code: "temperature-outside-table",
      file,
      value: `${temperatureC} °C`,
      message: say`The viscosity of water is not tabulated at this temperature: no sizes can be told.`,
      expected: say`10 to 30 °C`,
      wayOut: say`Repeat the test at room temperature.`,
    });
  }
  ENDS_MM.forEach((endMm, index) => {
    const settled = settledMm[index];
    if (settled === undefined || (settled <= endMm * FAR && settled >= endMm / FAR)) return;
    const early = settled > endMm;
    findings.push({
      severity: "warning",
      code: "jar-reading-time",
      file,
      row: layers[index].row,
      column: "time",
      value: `${formatNumber(layers[index].timeMin)} min`,
      message: say`After this time grains down to ${formatNumber(settled, 2)} mm had settled from the surface, so part of the ${early ? say`${layers[index].name} counts with the layer above it` : say`${layers[index + 1].name} counts with the ${layers[index].name}`}.`,
      expected: say`a reading when grains of ${endMm} mm have settled, in this water after about ${formatNumber(layers[index].timeMin * (settled / endMm) ** 2, 2)} min`,
      wayOut: say`Read the top at that time, or take the boundary at the size told here.`,
    });
  });
  if (last.timeMin < LAST_READING_MIN) {
    findings.push({
      severity: "warning",
      code: "jar-still-cloudy",
      file,
      row: last.row,
      column: "time",
      value: `${formatNumber(last.timeMin)} min`,
      message: say`The last reading was taken before a day had passed: clay still in suspension is not counted.`,
      expected: say`${LAST_READING_MIN} min or more, with clear water`,
      wayOut: say`Let the jar stand and read the top again.`,
    });
  }
  return findings;
}
