import type { Finding } from "../lab/finding.js";
import { formatFixed } from "../quantities/formatNumber.js";
import { say, sayOf } from "../words/say.js";
import { fromFittedScale, strengthAt } from "./strengthAt.js";
import type { FittedStrength } from "./strengthFit.js";

const STEPS = 100;

const mpa = (value: number) => `${formatFixed(value, 2)} MPa`;

/** What a reader must know beside the least cement content. */
export function leastCementFindings(
  fit: FittedStrength,
  of: {
    readonly file: string;
    readonly strengthMpa: number;
    /** Below zero where the bound misses the requirement. */
    readonly margin: (cementPct: number) => number;
    readonly cementPct: number | null;
    readonly batchablePct: number | null;
  },
): Finding[] {
  const { file, strengthMpa, margin, cementPct, batchablePct } = of;
  const { contentsPct } = fit;
  const [first, last] = [contentsPct[0], contentsPct[contentsPct.length - 1]];
  const grid = Array.from({ length: STEPS + 1 }, (_, i) => first + ((last - first) * i) / STEPS);
  const findings: Finding[] = [];
  const line = grid.map((content) => fromFittedScale(fit, strengthAt(fit, content).value));
  const span = Math.max(...line.map(Math.abs));
  const falls = line.findIndex((value, i) => i > 0 && value < line[i - 1] - 1e-9 * span);
  if (falls > 0) {
    findings.push({
      severity: "warning",
      code: "strength-falls-with-cement",
      file,
      column: "strength.form",
      value: fit.form,
      message: say`The fitted ${sayOf(fit.form)} curve falls with more cement from about ${formatFixed(grid[falls - 1], 1)} %.`,
      expected: say`strength that rises with cement`,
      wayOut: say`Look at the blocks there, and compare the other forms.`,
    });
  }
  if (cementPct !== null) {
    const lost = grid.find((content) => content > cementPct && margin(content) < 0);
    if (lost !== undefined) {
      findings.push({
        severity: "warning",
        code: "requirement-lost-again",
        file,
        column: "strength.requirement",
        value: mpa(strengthMpa),
        message: say`The bound falls below the requirement again at about ${formatFixed(lost, 1)} % cement.`,
        expected: say`a bound that stays above the requirement with more cement`,
        wayOut: say`Do not take more cement for safer; make more blocks at the highest content.`,
      });
    }
  }
  if (batchablePct !== null && batchablePct > last) {
    findings.push({
      severity: "warning",
      code: "rounded-beyond-tested",
      file,
      column: "strength.round-up-to",
      value: `${batchablePct} %`,
      message: say`Rounded up, the content lies above the highest tested content, ${last} %.`,
      expected: say`at most ${last} %`,
      wayOut: say`Choose a smaller step, or test blocks with that content.`,
    });
  }
  return findings;
}
