import type { Finding } from "../lab/finding.js";
import type { LimitsRecord } from "../lab/limitsRecord.js";
import { phrase, say, sayOf } from "../words/say.js";
import type { ConsistencyResult } from "./consistencyResult.js";

/** Ranges of the liquid limit test; the cup's after ASTM D4318, the cone's after BS 1377-2, both from memory. */
const MEASURES = {
  cup: { name: phrase`blows`, low: 15, high: 35, limit: 25 },
  cone: { name: phrase`mm of penetration`, low: 15, high: 25, limit: 20 },
};

/** What is wrong or doubtful about the points of a liquid limit. */
export function checkLiquidLimit(
  record: LimitsRecord,
  { flowLine, onePoint }: Pick<ConsistencyResult, "flowLine" | "onePoint">,
): Finding[] {
  const { file, liquidLimitPoints: points, liquidLimitMethod: method = "cup" } = record;
  if (points.length === 0) return [];
  const { low, high, limit, ...measured } = MEASURES[method];
  const name = sayOf(measured.name);
  if (onePoint) {
    return [
      {
        severity: "warning",
        code: "one-point-liquid-limit",
        file,
        row: points[0].row,
        value: `${points[0].measure} ${name}`,
        message: say`The liquid limit rests on one point and a slope of the flow line taken for known.`,
        expected: say`at least 3 points`,
        wayOut: say`Take more points at other water contents; until then the limit has no interval.`,
      },
    ];
  }
  const findings: Finding[] = points
    .filter(({ measure }) => measure < low || measure > high)
    .map(({ measure, row }) => ({
      severity: "warning",
      code: "liquid-limit-range",
      file,
      row,
      value: String(measure),
      message: say`This point lies far from the limit at ${limit} ${name}.`,
      expected: say`${low} to ${high} ${name}`,
      wayOut: say`Dry or wet the soil a little and take another point nearer to the limit.`,
    }));
  const measures = points.map(({ measure }) => measure);
  if (Math.min(...measures) > limit || Math.max(...measures) < limit) {
    findings.push({
      severity: "warning",
      code: "liquid-limit-outside",
      file,
      row: points[0].row,
      value: say`${Math.min(...measures)} to ${Math.max(...measures)} ${name}`,
      message: say`All points lie on one side of the limit: it is read off the line's prolongation.`,
      expected: say`points on both sides of ${limit} ${name}`,
      wayOut: say`Take a point on the other side.`,
    });
  }
  if (points.length < 3) {
    findings.push({
      severity: "warning",
      code: "few-liquid-limit-points",
      file,
      row: points[0].row,
      value: String(points.length),
      message: say`The flow line has too few points to show whether it is straight.`,
      expected: say`at least 3 points`,
      wayOut: say`Take more points at other water contents.`,
    });
  }
  // More water: fewer blows, deeper cone.
  const wrongWay = flowLine && (method === "cup" ? flowLine.slope >= 0 : flowLine.slope <= 0);
  if (wrongWay || !flowLine) {
    findings.push({
      severity: "error",
      code: "flow-line",
      file,
      row: points[0].row,
      message: flowLine
        ? say`The flow line leans the wrong way: wetter soil should need fewer blows, or let the cone deeper in.`
        : say`The points do not make a line: all have the same measure.`,
      expected: say`points at different water contents that follow one falling (cup) or rising (cone) line`,
      wayOut: say`Check the points for exchanged columns or slips of the pen.`,
    });
  }
  return findings;
}
