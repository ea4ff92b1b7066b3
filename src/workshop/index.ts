/** Exercises that answer. @module */
export { answerKey, mistakesTable } from "./answerKey.js";
export { blendingExercises } from "./blendingExercises.js";
export type { ClassStrength } from "./cementExercises.js";
export { cementExercises } from "./cementExercises.js";
export {
  blendsTable,
  type ClassBlend,
  type ClassBlendInput,
  classBlend,
} from "./classBlend.js";
export type { ClassReadings } from "./classSoil.js";
export { type ClassSoil, classSoil } from "./classSoil.js";
export { type ClassWall, volumeMassTable, wallCement } from "./classWall.js";
export type {
  AnswerTolerance,
  ChoiceExercise,
  ChoiceOption,
  Exercise,
  Mistake,
  NumberExercise,
} from "./exercise.js";
export { acceptedRange } from "./exercise.js";
export {
  type FewerBlocksDraw,
  type FewerBlocksRequirement,
  fewerBlocks,
  fewerBlocksTable,
} from "./fewerBlocks.js";
export { gradingExercises } from "./gradingExercises.js";
export { jarSharesTable } from "./jarSharesTable.js";
export {
  type AnswerReading,
  commonMistakes,
  type Judgement,
  judgeAnswer,
  readAnswer,
  recogniseMistake,
} from "./judgeAnswer.js";
export { savingExercises } from "./savingExercises.js";
export { checkAnswer, comparePredictions, openExercises, predict } from "./session.js";
