/** Exercises that answer. @module */
export { answerKey, wrongTurnsTable } from "./answerKey.js";
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
  Exercise,
  NumberExercise,
  WrongTurn,
} from "./exercise.js";
export { acceptedRange } from "./exercise.js";
export { type FewerBlocksDraw, fewerBlocks, fewerBlocksTable } from "./fewerBlocks.js";
export {
  gradingExercises,
  readOffWrongly,
  type WrongReadings,
} from "./gradingExercises.js";
export { jarSharesTable } from "./jarSharesTable.js";
export {
  type AnswerReading,
  commonTurns,
  type Judgement,
  judgeAnswer,
  readAnswer,
  recogniseTurn,
} from "./judgeAnswer.js";
export { savingExercises } from "./savingExercises.js";
export { comparePredictions, openExercises, predict, tryAnswer } from "./session.js";
