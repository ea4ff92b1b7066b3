import { powerOf } from "../../numerics/powerOf.js";
import { phrase } from "../../words/say.js";
import { passingAtSize } from "../passingAtSize.js";
import type { GradingModel } from "./gradingModel.js";
import { straightLine } from "./straightLine.js";

/** Where the curve begins: the upper size of clay. It says nothing about anything finer. */
const FIRST_MM = 0.002;

/**
 * Curve of Skaggs et al. (2001): 100 / (1 + (1 / f − 1) exp(−u R^c)), R = (d − d0) / d0, with f the share
 * finer than d0 = 0.002 mm. Finer than that it is held level. Not for soils with more than 70 % silt.
 *
 * @example
 * skaggs.evaluate(0.02, [0.2, 0.76976, 0.26585]) // => 49.86
 */
export const skaggs: GradingModel = {
  name: "skaggs",
  title: phrase`Skaggs`,
  parameters: [
    { name: "clayShare", unit: "", scale: "plain", lower: 0.0005, upper: 0.999 },
    { name: "u", unit: "", scale: "logarithm", lower: 1e-8, upper: 1e3 },
    { name: "c", unit: "", scale: "plain", lower: 0.02, upper: 5 },
  ],
  evaluate(sizeMm, [share, u, c]) {
    const ratio = Math.max(0, sizeMm / FIRST_MM - 1);
    return 100 / (1 + (1 / share - 1) * Math.exp(-u * powerOf(ratio, c)));
  },
  slopes(sizeMm, [share, u, c]) {
    const ratio = Math.max(0, sizeMm / FIRST_MM - 1);
    const power = powerOf(ratio, c);
    const fade = Math.exp(-u * power);
    const odds = 1 / share - 1;
    const steep = (100 * fade) / (1 + odds * fade) ** 2;
    if (!(steep > 0)) return [0, 0, 0];
    return [
      steep / share ** 2,
      odds * steep * power,
      ratio > 0 ? odds * steep * u * power * Math.log(ratio) : 0,
    ];
  },
  starts(curve) {
    const finest = curve.points[0];
    const share = Math.min(
      0.95,
      Math.max(0.005, (passingAtSize(curve, FIRST_MM) ?? finest.passingPct / 2) / 100),
    );
    const line = straightLine(
      curve.points
        .map(({ sizeMm, passingPct }) => ({
          x: Math.log(sizeMm / FIRST_MM - 1),
          y: Math.log(Math.log((1 / share - 1) / (100 / passingPct - 1))),
        }))
        .filter(({ x, y }) => Number.isFinite(x) && Number.isFinite(y)),
    );
    const from = line
      ? [[share, Math.exp(line.intercept), Math.min(4, Math.max(0.05, line.slope))]]
      : [];
    return [...from, [share, 0.5, 0.3], [share, 0.05, 0.8]];
  },
  source: phrase`Skaggs et al. 2001 (abstract read, with its limit of 70 % silt); equation from memory, fitted to all points here`,
};
