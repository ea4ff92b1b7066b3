/** Exercises that answer. @module */
export { answerKey, mistakesTable } from "./answerKey.js";
export { blendingExercises } from "./blendingExercises.js";
export { type ClassStrength, cementExercises, classStrength } from "./cementExercises.js";
export { blendsTable, type ClassBlend, type ClassBlendInput, classBlend } from "./classBlend.js";
export * from "./classBlocks.js";
export { blockRows, classRows, classRowsTable } from "./classRows.js";
export { type ClassGroup, type ClassSheet, readClassSheet } from "./classSheet.js";
export { type ClassReadings, type ClassSoil, classSoil } from "./classSoil.js";
export { type ClassWall, volumeMassTable, wallCement } from "./classWall.js";
export type {
  AnswerTolerance,
  ChoiceExercise,
  ChoiceOption,
  Exercise,
  Mistake,
  NoLesson,
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
export {
  type AnswerReading,
  commonMistakes,
  type Judgement,
  judgeAnswer,
  readAnswer,
  recogniseMistake,
} from "./judgeAnswer.js";
export {
  LESSONS,
  type Lesson,
  type LessonExercises,
  type LessonId,
  lessonExercises,
  openLesson,
  rehearsalTable,
} from "./lesson.js";
export {
  type ClassDay,
  type ClassGroupSoil,
  type ClassOptions,
  classDay,
  openClass,
} from "./openClass.js";
export { answerPaper, classForms, type Paper, worksheet } from "./papers.js";
export { semiLogPaper } from "./readingChart.js";
export { savingExercises } from "./savingExercises.js";
export {
  type AskedPrediction,
  afterAnswer,
  checkAnswer,
  comparePredictions,
  openExercises,
  openPredictions,
  predict,
} from "./session.js";
