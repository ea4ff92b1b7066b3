import { type Sentence, say } from "./message.js";

/**
 * Codes of results that a person reads as words. A result holds the same code in every language, so that
 * programs can compare it; tables and sentences say it by `wordFor`.
 */
export const SHOWN_CODES: readonly Sentence[] = [
  // roles of materials
  say`soil`,
  say`sand`,
  say`gravel`,
  // how serious a finding is
  say`error`,
  say`warning`,
  say`note`,
  // verdicts
  say`inside`,
  say`outside`,
  say`incomplete`,
  say`not measured`,
  say`not classified`,
  // bounds of a blend, and what its limits are on
  say`free`,
  say`clay`,
  say`silt`,
  say`fines`,
  // forms of the strength curve
  say`linear`,
  say`quadratic`,
  say`logarithmic`,
  say`power`,
  // what a regression is checked for
  say`normality`,
  say`equal spread of the contents`,
  say`spread that grows with strength`,
  // what the requirement is held against
  say`mean`,
  say`median`,
  // how an optimum or a limit was read off
  say`cubic`,
  say`cup`,
  say`cone`,
  say`three-point parabola`,
  // what a sedimentation is read by
  say`reading`,
  say`sample`,
  // how surely a remembered value is known
  say`high`,
  say`medium-high`,
  say`medium`,
  say`low`,
  // marks of where a value comes from
  say`read`,
  say`from memory`,
  say`common practice`,
  say`own calculation`,
];
