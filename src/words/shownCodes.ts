import { phrase } from "./say.js";

/**
 * Codes of results that a person reads as words. A result holds the same code in every language, so that
 * programs can compare it; tables and sentences say it by `sayOf`.
 */
export const SHOWN_CODES: readonly string[] = [
  // roles of materials
  phrase`soil`,
  phrase`sand`,
  phrase`gravel`,
  // how serious a finding is
  phrase`error`,
  phrase`warning`,
  phrase`note`,
  // verdicts
  phrase`inside`,
  phrase`outside`,
  phrase`incomplete`,
  phrase`not measured`,
  phrase`not classified`,
  // bounds of a blend, and what its limits are on
  phrase`free`,
  phrase`clay`,
  phrase`silt`,
  phrase`fines`,
  // forms of the strength curve
  phrase`linear`,
  phrase`quadratic`,
  phrase`logarithmic`,
  phrase`power`,
  // what a regression is checked for
  phrase`normality`,
  phrase`equal spread of the contents`,
  phrase`spread that grows with strength`,
  // what the requirement is held against
  phrase`mean`,
  phrase`median`,
  // how an optimum or a limit was read off
  phrase`cubic`,
  phrase`cup`,
  phrase`cone`,
  phrase`three-point parabola`,
  // what a sedimentation is read by
  phrase`reading`,
  phrase`sample`,
  // how surely a remembered value is known
  phrase`high`,
  phrase`medium-high`,
  phrase`medium`,
  phrase`low`,
  // marks of where a value comes from
  phrase`read`,
  phrase`from memory`,
  phrase`common practice`,
  phrase`own calculation`,
];
