/**
 * Codes of results that a person reads as words. A result holds the same code in every language, so that
 * programs can compare it; tables and sentences say it by `wordFor`, which takes these and no others: a code
 * that is new is missed by the compiler here, and by the catalogue's test in the other languages.
 */
export const SHOWN_CODES = [
  // roles of materials
  "soil",
  "sand",
  "gravel",
  // how serious a finding is
  "error",
  "warning",
  "note",
  // verdicts
  "inside",
  "outside",
  "incomplete",
  "not measured",
  "not classified",
  "favourable",
  "satisfactory",
  "unfavourable",
  // layers of a jar, bounds of a blend, what its limits are on, in what unit, and how its parts are measured
  "sand and gravel",
  "free",
  "clay",
  "silt",
  "fines",
  "passing",
  "top-size",
  "site-soil",
  "plasticity-index",
  "linear-shrinkage",
  "cost",
  "carbon",
  "%",
  "per t",
  "kg per t",
  "mass",
  "volume",
  // forms of the strength curve
  "linear",
  "quadratic",
  "logarithmic",
  "power",
  // what else strength may go with
  "ln age",
  "dry density",
  "moisture at test",
  // what a regression is checked for
  "normality",
  "equal spread of the contents",
  "spread that grows with strength",
  // what the requirement is held against
  "mean",
  "median",
  // what a control chart follows
  "means",
  "single blocks",
  // how an optimum or a limit was read off
  "cubic",
  "cup",
  "cone",
  "three-point parabola",
  "reported",
  // what a sedimentation is read by
  "reading",
  "sample",
  // how surely a remembered value is known
  "high",
  "medium-high",
  "medium",
  "low",
  // marks of where a value comes from
  "read",
  "from memory",
  "common practice",
  "own calculation",
] as const;

/** A code that has a word. */
export type ShownCode = (typeof SHOWN_CODES)[number];
