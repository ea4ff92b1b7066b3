import { phrase } from "../words/say.js";
import type { SheetLayout } from "./sheetLayout.js";

/** What a limits sheet may hold. */
export const LIMITS_LAYOUT: SheetLayout = {
  title: phrase`limits sheet`,
  facts: [
    {
      key: "wetLengthMm",
      names: ["shrinkage bar wet length"],
      kind: "number",
      dimension: "length",
      positive: true,
    },
    {
      key: "dryLengthMm",
      names: ["shrinkage bar dry length"],
      kind: "number",
      dimension: "length",
      positive: true,
    },
    {
      ...{ key: "boxShrinkageMm", names: ["long box shrinkage"], kind: "number" },
      ...{ dimension: "length", min: 0 },
    },
    {
      ...{ key: "boxLengthMm", names: ["long box length"], kind: "number" },
      ...{ dimension: "length", positive: true },
    },
    { key: "nonPlastic", names: ["non-plastic"], kind: "text" },
  ],
  columns: [
    { key: "test", names: ["test"], kind: "text", required: true },
    { key: "blows", names: ["blows"], kind: "number", min: 1, max: 100 },
    {
      key: "penetrationMm",
      names: ["penetration"],
      kind: "number",
      dimension: "length",
      positive: true,
      max: 40,
    },
    {
      key: "waterContentPct",
      names: ["water content"],
      kind: "number",
      dimension: "ratio",
      min: 0,
      max: 200,
    },
    { key: "tinG", names: ["tin"], kind: "number", dimension: "mass", positive: true },
    { key: "wetG", names: ["tin + wet soil"], kind: "number", dimension: "mass", positive: true },
    { key: "dryG", names: ["tin + dry soil"], kind: "number", dimension: "mass", positive: true },
  ],
};
