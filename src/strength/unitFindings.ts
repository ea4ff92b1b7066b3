import type { Finding } from "../lab/finding.js";
import type { SpecimenRecord } from "../lab/specimenRecord.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";

/** kgf/cm², psi and kPa (or kN/m²) in one MPa: what a strength written in another unit is off by. */
const UNITS = [
  ["kgf/cm²", 10.197],
  ["psi", 145.04],
  ["kPa", 1000],
] as const;
/** Blocks of one content and age never differ by so much, nor those of a whole sheet by the other. */
const [AMONG_LIKE, IN_SHEET] = [6, 30];

/**
 * Names blocks whose strength stands in another unit than the others', and cement contents that look like
 * fractions among percents. The units are the header's for a whole column, so one row of another unit
 * shows only by its size. Excluded blocks are not judged.
 */
export function unitFindings(file: string, specimens: readonly SpecimenRecord[]): Finding[] {
  const blocks = specimens.filter(
    ({ excluded, strengthMpa }) => !excluded && strengthMpa > 0 && Number.isFinite(strengthMpa),
  );
  const findings: Finding[] = [];
  for (const block of blocks) {
    const others = blocks.filter((other) => other !== block);
    const like = others.filter(
      ({ cementPct, ageDays }) => cementPct === block.cementPct && ageDays === block.ageDays,
    );
    const group = like.length >= 2 ? like : others;
    if (group.length < 2) continue;
    const usual = median(group.map(({ strengthMpa }) => strengthMpa));
    const ratio = block.strengthMpa / usual;
    if (Math.max(ratio, 1 / ratio) < (group === like ? AMONG_LIKE : IN_SHEET)) continue;
    const off = Math.abs(Math.log(ratio));
    const [unit] = [...UNITS].sort(
      ([, a], [, b]) => Math.abs(Math.log(a) - off) - Math.abs(Math.log(b) - off),
    )[0];
    findings.push({
      severity: "error",
      code: "mixed-units",
      file,
      row: block.row,
      column: "strength",
      value: `${block.strengthMpa} MPa`,
      message: say`Block ${block.id} is ${ratio > 1 ? say`${formatFixed(ratio, 0)} times as strong as` : say`a ${formatFixed(1 / ratio, 0)}th as strong as`} the others: it may be written in another unit, such as ${unit}.`,
      expected: say`about ${formatFixed(usual, 2)} MPa; one unit for the whole column`,
      wayOut: say`Convert the reading; if it is true, exclude the block with its reason.`,
    });
  }
  const contents = blocks.map(({ cementPct }) => cementPct);
  const usual = median(contents);
  const fraction = blocks.find(({ cementPct }) => cementPct > 0 && cementPct < 0.5);
  if (fraction && usual >= 2) {
    findings.push({
      severity: "warning",
      code: "cement-as-fraction",
      file,
      row: fraction.row,
      column: "cement",
      value: `${fraction.cementPct} %`,
      message: say`The cement content of block ${fraction.id} looks like a fraction, not a percentage.`,
      expected: say`percent, for example ${Number((100 * fraction.cementPct).toFixed(3))} %`,
      wayOut: say`Write all contents in percent of the dry mass of soil and aggregate.`,
    });
  }
  return findings;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
