import type { PlasticityGroup } from "./plasticityGroup.js";

const FINE_NAMES: Readonly<Record<PlasticityGroup, string>> = {
  ML: "silt",
  CL: "lean clay",
  "CL-ML": "silty clay",
  MH: "elastic silt",
  CH: "fat clay",
  OL: "organic soil",
  OH: "organic soil",
};

/** Group name of a fine-grained soil (ASTM D2487, from memory). */
export function fineGroupName(group: PlasticityGroup, gravelPct: number, sandPct: number): string {
  const name = FINE_NAMES[group];
  const coarse = gravelPct + sandPct;
  const sandier = sandPct >= gravelPct;
  if (coarse < 15) return name;
  if (coarse < 30) return `${name} with ${sandier ? "sand" : "gravel"}`;
  const lesser = sandier ? gravelPct : sandPct;
  const tail = lesser >= 15 ? ` with ${sandier ? "gravel" : "sand"}` : "";
  return `${sandier ? "sandy" : "gravelly"} ${name}${tail}`;
}

/** Group name of a coarse-grained soil (ASTM D2487, from memory). */
export function coarseGroupName(
  soil: {
    readonly main: "gravel" | "sand";
    readonly grading?: "well-graded" | "poorly graded";
    readonly group?: PlasticityGroup;
  },
  otherPct: number,
): string {
  const { main, grading, group } = soil;
  const other = otherPct >= 15 ? (main === "gravel" ? "sand" : "gravel") : undefined;
  const clayey = group?.startsWith("C");
  if (grading === undefined) {
    const fines = group === "CL-ML" ? "silty, clayey" : clayey ? "clayey" : "silty";
    return `${fines} ${main}${other ? ` with ${other}` : ""}`;
  }
  if (group === undefined) return `${grading} ${main}${other ? ` with ${other}` : ""}`;
  const fines = group === "CL-ML" ? "silty clay" : clayey ? "clay" : "silt";
  return `${grading} ${main} with ${fines}${other ? ` and ${other}` : ""}`;
}
