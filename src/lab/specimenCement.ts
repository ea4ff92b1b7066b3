import { say } from "../words/say.js";
import { cementFromParts } from "./cementFromParts.js";
import type { Finding } from "./finding.js";
import type { SheetRow, SheetValues } from "./sheetLayout.js";

/**
 * The cement content of a row: as entered, or from its parts by loose volume with the densities above
 * the table. Pushes a finding and gives undefined where there is none to be had.
 */
export function specimenCement(
  sheet: SheetValues,
  { row, values, written }: SheetRow,
  findings: Finding[],
): number | undefined {
  const { file, headers, facts } = sheet;
  const { cementPct, cementParts, soilParts } = values;
  const refuse = (
    code: string,
    column: string | undefined,
    rest: Omit<Finding, "severity" | "code" | "file">,
  ) => {
    findings.push({ severity: "error", code, file, row, column, ...rest });
    return undefined;
  };
  const parts = Boolean(written.cementParts || written.soilParts);
  if (written.cementPct && parts) {
    return refuse("cement-twice", headers.cementPct, {
      value: `${written.cementPct}; ${written.cementParts} : ${written.soilParts}`,
      message: say`This block has its cement in percent and in parts.`,
      expected: say`one of the two, so that they cannot contradict each other`,
      wayOut: say`Leave the cells of one of them empty.`,
    });
  }
  if (!parts) {
    if (written.cementPct) return cementPct as number | undefined;
    return refuse("missing-value", headers.cementPct ?? headers.cementParts, {
      value: "",
      message: say`This block has no cement content.`,
      expected: say`cement in percent of the dry mass, or cement parts and soil parts by loose volume`,
      wayOut: say`Fill it in (0 for none), or start the row with # to leave it out.`,
    });
  }
  if (!(written.cementParts && written.soilParts)) {
    return refuse("missing-value", headers.cementParts ?? headers.soilParts, {
      value: `${written.cementParts ?? ""} : ${written.soilParts ?? ""}`,
      message: say`Parts by volume need both numbers.`,
      expected: say`cement parts and soil parts`,
      wayOut: say`Fill in the missing one.`,
    });
  }
  const { cementLooseDensityKgM3, soilLooseDensityKgM3, soilMoisturePct } = facts;
  if (
    typeof cementParts !== "number" ||
    typeof soilParts !== "number" ||
    typeof cementLooseDensityKgM3 !== "number" ||
    typeof soilLooseDensityKgM3 !== "number"
  ) {
    // A density that is missing is told once for the sheet, one that cannot be read at its cell.
    return undefined;
  }
  return cementFromParts({
    cementParts,
    soilParts,
    cementLooseDensityKgM3,
    soilLooseDensityKgM3,
    soilMoisturePct: soilMoisturePct as number | undefined,
  });
}

/** Names a sheet that has no cement column at all, or parts by volume without the loose densities. */
export function checkCementColumns(
  sheet: SheetValues,
  headerRow: number,
  findings: Finding[],
): boolean {
  const { file, headers, factRows, rows } = sheet;
  if (!headers.cementPct && !headers.cementParts) {
    findings.push({
      severity: "error",
      code: "wrong-header",
      file,
      row: headerRow,
      value: Object.values(headers).join(", "),
      message: say`The column “cement” is missing.`,
      expected: say`“cement (%)”, or “cement parts” and “soil parts”`,
      wayOut: say`Add the column, or rename the one that holds it.`,
    });
    return false;
  }
  const lacking = [
    ...("cementLooseDensityKgM3" in factRows ? [] : ["“cement loose density (kg/m3)”"]),
    ...("soilLooseDensityKgM3" in factRows ? [] : ["“soil loose density (kg/m3)”"]),
  ];
  const first = rows.find(({ written }) => written.cementParts || written.soilParts);
  if (first && lacking.length > 0) {
    findings.push({
      severity: "error",
      code: "parts-without-densities",
      file,
      row: first.row,
      column: headers.cementParts,
      value: `${first.written.cementParts ?? ""} : ${first.written.soilParts ?? ""}`,
      message: say`The cement is in parts by volume, but the sheet does not say what a loose volume weighs.`,
      expected: say`${lacking.join(say` and `)} above the table`,
      wayOut: say`Fill a measure of known volume as on site, weigh it, and add the lines.`,
    });
  }
  return true;
}
