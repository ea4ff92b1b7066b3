import type { Finding } from "../lab/finding.js";
import type { LongBoxShrinkage } from "./longBoxShrinkage.js";

/** The flow line of a liquid limit test, in the test's own measure. */
export interface FlowLine {
  readonly method: "cup" | "cone";
  /** Water content against log10 of blows (cup) or millimetres of penetration (cone). */
  readonly slope: number;
  readonly intercept: number;
  /** Root of the residual variance, percent water; absent for two points. */
  readonly residualSdPct?: number;
}

export interface ConsistencyResult {
  readonly nonPlastic: boolean;
  readonly liquidLimitPct?: number;
  /** 95 % confidence limits of the flow line at the limit; absent for fewer than three points. */
  readonly liquidLimitInterval95?: readonly [number, number];
  /** The liquid limit rests on a single point of the cup and a slope taken for known. */
  readonly onePoint?: true;
  readonly plasticLimitPct?: number;
  /** How far the threads lie apart; absent without a thread. */
  readonly plasticLimitRangePct?: number;
  /** 95 % limits of the mean of the threads; absent for one thread. */
  readonly plasticLimitInterval95?: readonly [number, number];
  readonly plasticityIndexPct?: number;
  /** 95 % limits of the difference of both limits; absent where either has none. */
  readonly plasticityIndexInterval95?: readonly [number, number];
  /** Plasticity index at this liquid limit on the A-line. */
  readonly aLinePct?: number;
  readonly uLinePct?: number;
  /** On or above the A-line. */
  readonly aboveALine?: boolean;
  /** Of the laboratory bar. */
  readonly linearShrinkagePct?: number;
  /** Of the long field box: another number than the bar's, held against nothing that is made for the bar. */
  readonly longBox?: LongBoxShrinkage;
  readonly flowLine?: FlowLine;
  readonly findings: readonly Finding[];
}
