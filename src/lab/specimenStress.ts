import { formatFixed } from "../quantities/formatNumber.js";
import { say } from "../words/say.js";
import type { Finding } from "./finding.js";
import type { SheetRow, SheetValues } from "./sheetLayout.js";
import type { SpecimenShape } from "./specimenRecord.js";

/** Strength and load over area may differ by their roundings, not by more. */
const ROUNDING = 0.03;

const number = (value: unknown) => (typeof value === "number" ? value : undefined);

/** The shape of a row, strength, loaded area and dry density; findings for what does not go together. */
export function specimenStress(
  { file, headers }: SheetValues,
  { row, values, written }: SheetRow,
  findings: Finding[],
): { shape?: SpecimenShape; strengthMpa?: number; dryDensityKgM3?: number } {
  const push = (
    code: string,
    column: string | undefined,
    rest: Pick<Finding, "value" | "message" | "expected" | "wayOut">,
  ) => findings.push({ severity: "error", code, file, row, column, ...rest });
  const shape = written.shape ? written.shape.toLowerCase() : undefined;
  if (shape !== undefined && !["cube", "prism", "cylinder"].includes(shape)) {
    push("unknown-shape", headers.shape, {
      value: written.shape,
      message: say`This shape is not known here.`,
      expected: say`cube, prism or cylinder`,
      wayOut: say`Write the nearest of them, and what it is in the remark.`,
    });
    return {};
  }
  const [length, width, diameter] = ["lengthMm", "widthMm", "diameterMm"].map((key) =>
    number(values[key]),
  );
  const round = shape === "cylinder" || (shape === undefined && diameter !== undefined);
  if (written.lengthMm && written.diameterMm) {
    push("two-shapes", headers.diameterMm, {
      value: `${written.lengthMm}; ${written.diameterMm}`,
      message: say`This block has a length and a diameter.`,
      expected: say`length and width of a rectangular face, or the diameter of a round one`,
      wayOut: say`Leave the cells of the other shape empty.`,
    });
  }
  const area = round
    ? diameter && (Math.PI / 4) * diameter ** 2
    : length && width && length * width;
  const load = number(values.loadKn);
  const stress = load !== undefined && area ? (load * 1000) / area : undefined;
  const entered = number(values.strengthMpa);
  if (entered !== undefined && stress !== undefined && Math.abs(entered / stress - 1) > ROUNDING) {
    push("strength-and-load-differ", headers.strengthMpa, {
      value: `${written.strengthMpa}; ${written.loadKn}`,
      message: say`The strength entered, ${formatFixed(entered, 3)} MPa, is not the load over the loaded face, ${formatFixed(stress, 3)} MPa.`,
      expected: say`the same strength within 3 %`,
      wayOut: say`Check the units in the header of both, and that the strength is not yet corrected for shape.`,
    });
  }
  const needed = round ? written.diameterMm : written.lengthMm && written.widthMm;
  if (
    entered === undefined &&
    stress === undefined &&
    !written.strengthMpa &&
    !(written.loadKn && needed)
  ) {
    push("missing-value", undefined, {
      value: "",
      message: say`This block has no strength.`,
      expected: say`a strength, or a load with the length and width (or the diameter) of the loaded face`,
      wayOut: say`Fill in the readings, or start the row with # to leave it out.`,
    });
  }
  const [mass, height, moisture] = ["massG", "heightMm", "testMoisturePct"].map((key) =>
    number(values[key]),
  );
  // g over mm³ is 10⁶ kg/m³.
  const dry =
    mass && area && height && moisture !== undefined
      ? (1e6 * mass) / (area * height) / (1 + moisture / 100)
      : undefined;
  return {
    shape: shape as SpecimenShape | undefined,
    strengthMpa: entered ?? stress,
    dryDensityKgM3: number(values.dryDensityKgM3) ?? dry,
  };
}
