import { group, names, optional, required } from "./groups.js";
import { earthDensity, type Kind, percent, text } from "./kinds.js";
import type { CompareConfig } from "./studyConfig.js";
import { SHARES_SUM } from "./trials.js";

/** `compare-mix`: shares and a cement content to hold the chosen mix against. */
export const compareMix: Kind<CompareConfig> = group(
  {
    name: required("name", text("site soil alone with 10 % cement"), "Name as it is printed."),
    shares: required(
      "sharesPct",
      names(percent("100 %"), "site-soil"),
      "Shares of the dry mass of soil and aggregate by material id; what is not named has none.",
    ),
    cement: required(
      "cementPct",
      percent("10 %", 50),
      "Cement, of the dry mass of soil and aggregate.",
    ),
    density: optional(
      "densityKgM3",
      earthDensity("1850 kg/m3"),
      "Rammed dry density of its solids; left out, that of the chosen mix.",
    ),
    moisture: optional(
      "moisturePct",
      percent("11 %", 60),
      "Moisture at ramming; left out, that of the chosen mix.",
    ),
    basis: required(
      "basis",
      text("Mix of the neighbouring house, not tested"),
      "Where the mix comes from and whether it was tested, in your words.",
    ),
  },
  {
    name: "CompareConfig",
    checks: [SHARES_SUM],
  },
);
